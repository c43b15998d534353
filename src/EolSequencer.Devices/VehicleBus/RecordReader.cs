using System.Runtime.CompilerServices;
using System.Collections.Immutable;
using EolSequencer.Devices.Diagnostics;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Wire;
using EolSequencer.Wire.Uds;

namespace EolSequencer.Devices.VehicleBus;

/// <summary>Channels that lie in a record of a control unit: data identifiers and routine results.</summary>
internal sealed class RecordReader(UnitDirectory units) : IChannelReader
{
    [AsyncMethodBuilder(typeof(PoolingAsyncValueTaskMethodBuilder<>))]
    public async ValueTask<Reading> ReadAsync(ReadRequest request, CancellationToken cancel)
    {
        var record = Record.Of(request.Channel.Source!);
        var end = await units.Of(record.Unit ?? request.Index!).RequestAsync(record.Request, cancel);
        return record.Decode(request.Index, end);
    }

    public async ValueTask<IReadOnlyList<Reading>> ReadEachAsync(ReadRequest request, IReadOnlyList<string> indexes, CancellationToken cancel)
    {
        var record = Record.Of(request.Channel.Source!);
        var readings = new Reading[indexes.Count];

        // The record of one unit holds all indexes, so one exchange answers for all of them.
        var ofAll = record.Unit is null ? default : await units.Of(record.Unit).RequestAsync(record.Request, cancel);
        for (var at = 0; at < readings.Length; at++)
        {
            var end = record.Unit is null ? await units.Of(indexes[at]).RequestAsync(record.Request, cancel) : ofAll;
            readings[at] = record.Decode(indexes[at], end);
        }

        return readings;
    }

    /// <summary>Where a channel's value lies.</summary>
    /// <param name="Unit">Whose record it is; null: the index says so.</param>
    /// <param name="Identifier">The data identifier or routine.</param>
    private readonly record struct Record(
        string? Unit, ushort Identifier, bool IsRoutine, byte[] Request, RawForm Form, ImmutableDictionary<string, BitRange> Bits)
    {
        public static Record Of(ChannelSource source) => source switch
        {
            ChannelSource.Data data => new Record(
                data.Ecu, (ushort)data.Identifier, false, ReadDataByIdentifier.MakeRequest((ushort)data.Identifier), data.Form, data.Bits),
            ChannelSource.RoutineResult routine => new Record(
                routine.Ecu,
                (ushort)routine.Identifier,
                true,
                RoutineControl.MakeRequest(RoutineControl.Act.RequestResults, (ushort)routine.Identifier),
                routine.Form,
                routine.Bits),
            _ => throw new InvalidOperationException($"{source.GetType().Name} is no record"),
        };

        public Reading Decode(string? index, in ExchangeEnd end)
        {
            if (end.Missing is { } cause) return Reading.None(cause, end.Stamp, end.Detail!, end.Response);
            var decoded = IsRoutine ? RoutineControl.ReadResponse(end.Response) : ReadDataByIdentifier.ReadResponse(end.Response, Identifier);
            if (decoded.Fault is { } fault) return None(index, MissingCause.ShortAnswer, fault, end);
            BitRange? bits = Bits.IsEmpty ? null : Bits[Unit is null ? "" : index ?? ""];
            var (value, missing, detail) = FormCodec.Decode(Form, bits, decoded.Value.Span);
            return value is not null ? Reading.Of(value, end.Stamp, end.Response) : None(index, missing, detail!, end);
        }

        private Reading None(string? index, MissingCause cause, string detail, in ExchangeEnd end) =>
            Reading.None(cause, end.Stamp, $"{Unit ?? index}: {Convert.ToHexString(Request)}: {detail}", end.Response);
    }
}
