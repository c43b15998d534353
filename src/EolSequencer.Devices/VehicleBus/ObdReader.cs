using System.Runtime.CompilerServices;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Values;
using EolSequencer.Wire.Obd;

namespace EolSequencer.Devices.VehicleBus;

/// <summary>
/// Parameters of service 01 (SAE J1979), asked of all units at once. The first unit that answers gives the value; a
/// unit that does not support the parameter keeps silent.
/// </summary>
internal sealed class ObdReader(UnitDirectory units) : IChannelReader
{
    [AsyncMethodBuilder(typeof(PoolingAsyncValueTaskMethodBuilder<>))]
    public async ValueTask<Reading> ReadAsync(ReadRequest request, CancellationToken cancel)
    {
        var parameter = (byte)((ChannelSource.Obd)request.Channel.Source!).Parameter;
        var end = await units.Emissions.RequestAsync(CurrentData.MakeRequest(parameter), cancel);
        if (end.Missing is { } cause) return Reading.None(cause, end.Stamp, end.Detail!, end.Response);
        var decoded = CurrentData.ReadResponse(end.Response);
        if (decoded.Fault is { } fault) return Reading.None(MissingCause.ShortAnswer, end.Stamp, $"01{parameter:X2}: {fault}", end.Response);
        var value = ParameterTable.Find(parameter)!.Values[0];
        return value.TryRead(decoded.Value[0].Data.Span, out var number)
            ? Reading.Of(new NumberValue(number, value.Unit), end.Stamp, end.Response)
            : Reading.None(MissingCause.InvalidMarker, end.Stamp, $"01{parameter:X2}: the unit marks its value as not used", end.Response);
    }

    /// <summary>A parameter has no index, so whatever is asked for is the same reading.</summary>
    public async ValueTask<IReadOnlyList<Reading>> ReadEachAsync(ReadRequest request, IReadOnlyList<string> indexes, CancellationToken cancel)
    {
        var reading = await ReadAsync(request, cancel);
        return [.. indexes.Select(_ => reading)];
    }
}
