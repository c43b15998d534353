using EolSequencer.Devices.Diagnostics;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;
using EolSequencer.Model.Waiting;
using EolSequencer.Wire.Can;
using EolSequencer.Wire.IsoTp;
using EolSequencer.Wire.Obd;

namespace EolSequencer.Devices.VehicleBus;

/// <summary>
/// Parameters of service 01 (SAE J1979), asked of all units at once. The first unit that answers gives the value; a
/// unit that does not support the parameter keeps silent.
/// </summary>
internal sealed class ObdReader(IReadOnlyList<ControlUnit> fitted, ICanPort port, TimeProvider time, DiagnosticTiming timing) : IChannelReader
{
    private readonly Turnstile _turns = new();

    public async ValueTask<Reading> ReadAsync(ReadRequest request, CancellationToken cancel)
    {
        using var turn = await _turns.EnterAsync(cancel);
        var parameter = (byte)((ChannelSource.Obd)request.Channel.Source!).Parameter;
        var message = CurrentData.MakeRequest(parameter);
        var answer = new TaskCompletionSource<(ReadOnlyMemory<byte> Message, long Stamp)>(TaskCreationOptions.RunContinuationsAsynchronously);
        var listenings = Listen((response, stamp) =>
        {
            if (IsAnswer(response.Span, parameter)) answer.TrySetResult((response, stamp));
        });
        using var outer = cancel.Register(() => answer.TrySetCanceled(cancel));
        try
        {
            var sent = await port.SendAsync(new MessageSender(ObdAddresses.All, new TransportOptions()).Begin(message).Frame!.Value, cancel);
            if (!sent.IsConfirmed) return Reading.None(MissingCause.LinkDown, sent.Stamp, $"{Convert.ToHexString(message)}: the request did not go out, the link is down");
            using var timer = time.CreateTimer(_ => answer.TrySetResult((default, time.GetTimestamp())), null, timing.P2, Timeout.InfiniteTimeSpan);
            var (response, stamp) = await answer.Task;
            return response.IsEmpty
                ? Reading.None(MissingCause.Silent, stamp, $"{Convert.ToHexString(message)}: no unit answered within {timing.P2.TotalMilliseconds:0} ms")
                : Decode(parameter, response, stamp);
        }
        finally
        {
            foreach (var listening in listenings) listening.Dispose();
        }
    }

    public async ValueTask<IReadOnlyList<Reading>> ReadEachAsync(ReadRequest request, IReadOnlyList<string> indexes, CancellationToken cancel) =>
        [await ReadAsync(request, cancel)];

    private List<IDisposable> Listen(Action<ReadOnlyMemory<byte>, long> received)
    {
        var listenings = new List<IDisposable>(ObdAddresses.UnitCount);
        for (var number = 0; number < ObdAddresses.UnitCount; number++)
        {
            var address = ObdAddresses.Unit(number);
            if (!fitted.Any(unit => UnitDirectory.IdOf(unit.Response) == address.Receive.Id)) continue;
            listenings.Add(port.Listen(address.Receive.Id, new SingleFrames(address, received), Repeats.All));
        }

        return listenings;
    }

    private static bool IsAnswer(ReadOnlySpan<byte> response, byte parameter) =>
        response.Length > 1 && response[0] == (byte)ObdService.CurrentData + 0x40 && response[1] == parameter;

    private static Reading Decode(byte parameter, ReadOnlyMemory<byte> response, long stamp)
    {
        var decoded = CurrentData.ReadResponse(response);
        if (decoded.Fault is { } fault) return Reading.None(MissingCause.ShortAnswer, stamp, $"01{parameter:X2}: {fault}", response);
        var value = ParameterTable.Find(parameter)!.Values[0];
        return value.TryRead(decoded.Value[0].Data.Span, out var number)
            ? Reading.Of(new NumberValue(number, value.Unit), stamp, response)
            : Reading.None(MissingCause.InvalidMarker, stamp, $"01{parameter:X2}: the unit marks its value as not used", response);
    }

    /// <summary>
    /// Answers of service 01 to one parameter fit into a single frame. Longer messages belong to the unit's own client,
    /// which alone may ask for their rest.
    /// </summary>
    private sealed class SingleFrames(TransportAddress address, Action<ReadOnlyMemory<byte>, long> received) : ICanListener
    {
        private readonly MessageReceiver _receiver = new(address, new TransportOptions());

        public void Received(in CanFrame frame, long stamp)
        {
            var step = _receiver.Accept(frame);
            if (!step.Message.IsEmpty) received(step.Message, stamp);
        }

        public void Silenced(CanId id, long lastStamp)
        {
            // Answers have no cycle.
        }
    }
}
