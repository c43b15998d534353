using System.Buffers;
using System.Collections.Immutable;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Values;
using EolSequencer.Wire.TroubleCodes;
using EolSequencer.Wire.Uds;

namespace EolSequencer.Devices.VehicleBus;

/// <summary>What a whole service of one or all control units gives: stored trouble codes, presence.</summary>
internal sealed class ServiceReader(UnitDirectory units, TimeProvider time) : IChannelReader
{
    public ValueTask<Reading> ReadAsync(ReadRequest request, CancellationToken cancel)
    {
        var service = (ChannelSource.Service)request.Channel.Source!;
        return service.Kind switch
        {
            ServiceRead.StoredTroubleCodes => CodesAsync(service, request.Index, cancel),
            ServiceRead.Presence => PresenceAsync(service, request.Index, cancel),
            _ => throw new InvalidOperationException($"unknown service {service.Kind}"),
        };
    }

    public async ValueTask<IReadOnlyList<Reading>> ReadEachAsync(ReadRequest request, IReadOnlyList<string> indexes, CancellationToken cancel)
    {
        var readings = new Reading[indexes.Count];
        for (var at = 0; at < readings.Length; at++) readings[at] = await ReadAsync(request with { Index = indexes[at] }, cancel);
        return readings;
    }

    /// <summary>The codes of every unit meant; when all are, each with its unit in front. A unit that does not tell hides nothing: there is no list then.</summary>
    private async ValueTask<Reading> CodesAsync(ChannelSource.Service service, string? index, CancellationToken cancel)
    {
        var isOfAll = (service.Ecu ?? index) is null;
        var codes = ImmutableArray.CreateBuilder<string>();
        var raw = new ArrayBufferWriter<byte>();
        var stamp = time.GetTimestamp();
        var request = ReadDtcInformation.MakeListRequest((TroubleCodeStatus)service.Mask);
        foreach (var unit in units.Meant(service.Ecu, index))
        {
            var end = await units.Of(unit).RequestAsync(request, cancel);
            if (end.Missing is { } cause) return Reading.None(cause, end.Stamp, end.Detail!, end.Response);
            var list = ReadDtcInformation.ReadList(end.Response.Span);
            if (list.Fault is { } fault) return Reading.None(MissingCause.ShortAnswer, end.Stamp, $"{unit}: {Convert.ToHexString(request)}: {fault}", end.Response);
            foreach (var entry in list.Value.Entries) codes.Add(isOfAll ? $"{unit}:{TextOf(entry.Code)}" : TextOf(entry.Code));
            raw.Write(end.Response.Span);
            stamp = end.Stamp;
        }

        return Reading.Of(new ListValue(codes.DrainToImmutable()), stamp, raw.WrittenMemory);
    }

    /// <summary>The usual five characters; a failure type that says something follows behind a hyphen (SAE J2012-DA): <c>C0035-11</c>.</summary>
    private static string TextOf(TroubleCode code) => code.FailureType is null or 0 ? code.BaseText : code.ToString();

    /// <summary>Yes when every unit meant answers; a unit that refuses the request is awake all the same.</summary>
    private async ValueTask<Reading> PresenceAsync(ChannelSource.Service service, string? index, CancellationToken cancel)
    {
        var stamp = time.GetTimestamp();
        foreach (var unit in units.Meant(service.Ecu, index))
        {
            var end = await units.Of(unit).RequestAsync(TesterPresent.MakeRequest(), cancel);
            if (end.Missing == MissingCause.LinkDown) return Reading.None(MissingCause.LinkDown, end.Stamp, end.Detail!);
            if (end.Missing is not null and not MissingCause.Refused) return Reading.Of(TruthValue.No, end.Stamp) with { Detail = end.Detail };
            stamp = end.Stamp;
        }

        return Reading.Of(TruthValue.Yes, stamp);
    }
}
