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
    public async ValueTask<Reading> ReadAsync(ReadRequest request, CancellationToken cancel)
    {
        var record = RecordOf(request.Channel.Source!);
        var end = await units.Of(record.Unit ?? request.Index!).RequestAsync(record.Request, cancel);
        return Decode(record, request.Index, end);
    }

    public async ValueTask<IReadOnlyList<Reading>> ReadEachAsync(ReadRequest request, IReadOnlyList<string> indexes, CancellationToken cancel)
    {
        var record = RecordOf(request.Channel.Source!);
        var readings = new List<Reading>(indexes.Count);
        if (record.Unit is not null)
        {
            // The record of one unit holds all indexes, so one exchange answers for all of them.
            var end = await units.Of(record.Unit).RequestAsync(record.Request, cancel);
            foreach (var index in indexes) readings.Add(Decode(record, index, end));
            return readings;
        }

        foreach (var index in indexes) readings.Add(Decode(record, index, await units.Of(index).RequestAsync(record.Request, cancel)));
        return readings;
    }

    private readonly record struct Record(
        string? Unit,
        byte[] Request,
        Func<ReadOnlyMemory<byte>, Decoded<ReadOnlyMemory<byte>>> Read,
        RawForm Form,
        ImmutableDictionary<string, BitRange> Bits);

    private static Record RecordOf(ChannelSource source) => source switch
    {
        ChannelSource.Data data => new Record(
            data.Ecu,
            ReadDataByIdentifier.MakeRequest((ushort)data.Identifier),
            message => ReadDataByIdentifier.ReadResponse(message, (ushort)data.Identifier),
            data.Form,
            data.Bits),
        ChannelSource.RoutineResult routine => new Record(
            routine.Ecu,
            RoutineControl.MakeRequest(RoutineControl.Act.RequestResults, (ushort)routine.Identifier),
            RoutineControl.ReadResponse,
            routine.Form,
            routine.Bits),
        _ => throw new InvalidOperationException($"{source.GetType().Name} is no record"),
    };

    private static Reading Decode(Record record, string? index, ExchangeEnd end)
    {
        if (end.Missing is { } cause) return Reading.None(cause, end.Stamp, end.Detail!);
        var decoded = record.Read(end.Response);
        if (decoded.Fault is { } fault) return None(record, index, MissingCause.ShortAnswer, fault, end);
        BitRange? bits = record.Bits.TryGetValue(record.Unit is null ? "" : index ?? "", out var found) ? found : null;
        var (value, missing, detail) = FormCodec.Decode(record.Form, bits, decoded.Value.Span);
        return value is not null ? Reading.Of(value, end.Stamp, end.Response) : None(record, index, missing!.Value, detail!, end);
    }

    private static Reading None(Record record, string? index, MissingCause cause, string detail, ExchangeEnd end) =>
        Reading.None(cause, end.Stamp, $"{record.Unit ?? index}: {Convert.ToHexString(record.Request)}: {detail}", end.Response);
}
