using System.Runtime.CompilerServices;
using EolSequencer.Devices.Waiting;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Ports;
using EolSequencer.Wire.Can;

namespace EolSequencer.Devices.VehicleBus;

/// <summary>Signals in cyclic frames. A signal that has not come for three cycles is stale.</summary>
internal sealed class BroadcastReader(ICanPort port, TimeProvider time) : IChannelReader
{
    /// <summary>Cycles without an arrival after which the newest value is too old.</summary>
    public const int StaleAfterCycles = 3;

    [AsyncMethodBuilder(typeof(PoolingAsyncValueTaskMethodBuilder<>))]
    public async ValueTask<Reading> ReadAsync(ReadRequest request, CancellationToken cancel)
    {
        var first = new Signal<Reading>();
        first.Reset();
        using var watch = new SignalWatch(port, time, request, first.TrySet);
        var arrival = first.WaitAsync(cancel, out var giveUp);
        using (giveUp) return await arrival;
    }

    public async ValueTask<IReadOnlyList<Reading>> ReadEachAsync(ReadRequest request, IReadOnlyList<string> indexes, CancellationToken cancel)
    {
        // One frame holds all indexes, so one arrival answers for all of them.
        var source = (ChannelSource.Broadcast)request.Channel.Source!;
        var first = await ReadAsync(request with { Index = indexes[0] }, cancel);
        return [.. indexes.Select(index => first.Raw.IsEmpty ? first : Decode(source, index, first.Raw, first.Stamp))];
    }

    /// <summary>Hands on a signal at each arrival that may have changed it, and once when it becomes stale.</summary>
    public IDisposable Watch(in ReadRequest request, IReadingListener listener) =>
        new SignalWatch(port, time, request, reading => listener.Received(reading));

    internal static Reading Decode(ChannelSource.Broadcast source, string? index, ReadOnlyMemory<byte> data, long stamp)
    {
        var (value, missing, detail) = FormCodec.Decode(source.Form, source.Bits[index ?? ""], data.Span);
        return value is not null
            ? Reading.Of(value, stamp, data)
            : Reading.None(missing, stamp, $"frame {BusAddresses.IdOf(source.FrameId)}: {detail}", data);
    }
}
