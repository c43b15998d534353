using System.Collections.Immutable;
using EolSequencer.Devices.Diagnostics;
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
        var readings = new List<Reading>(indexes.Count);
        foreach (var index in indexes) readings.Add(await ReadAsync(request with { Index = index }, cancel));
        return readings;
    }

    private async ValueTask<Reading> CodesAsync(ChannelSource.Service service, string? index, CancellationToken cancel)
    {
        var meant = units.Meant(service.Ecu, index).ToList();
        var codes = ImmutableArray.CreateBuilder<string>();
        var request = ReadDtcInformation.MakeListRequest((TroubleCodeStatus)service.Mask);
        var last = default(ExchangeEnd);
        foreach (var unit in meant)
        {
            last = await units.Of(unit).RequestAsync(request, cancel);
            if (last.Missing is { } cause) return Reading.None(cause, last.Stamp, last.Detail!);
            var list = ReadDtcInformation.ReadList(last.Response.Span);
            if (list.Fault is { } fault) return Reading.None(MissingCause.ShortAnswer, last.Stamp, $"{unit}: {Convert.ToHexString(request)}: {fault}", last.Response);
            foreach (var entry in list.Value.Entries) codes.Add(meant.Count == 1 ? TextOf(entry.Code) : $"{unit}:{TextOf(entry.Code)}");
        }

        return Reading.Of(new ListValue(codes.DrainToImmutable()), last.Stamp, meant.Count == 1 ? last.Response : default);
    }

    /// <summary>The usual five characters; a failure type that says something follows behind a hyphen (SAE J2012-DA).</summary>
    private static string TextOf(TroubleCode code) => code.FailureType is null or 0 ? code.BaseText : code.ToString();

    /// <summary>Yes when every unit meant answers; a unit that refuses the request is awake all the same.</summary>
    private async ValueTask<Reading> PresenceAsync(ChannelSource.Service service, string? index, CancellationToken cancel)
    {
        foreach (var unit in units.Meant(service.Ecu, index))
        {
            var end = await units.Of(unit).RequestAsync(TesterPresent.MakeRequest(), cancel);
            if (end.Missing == MissingCause.LinkDown) return Reading.None(MissingCause.LinkDown, end.Stamp, end.Detail!);
            if (end.Missing is not null and not MissingCause.Refused) return Reading.Of(TruthValue.No, end.Stamp);
        }

        return Reading.Of(TruthValue.Yes, time.GetTimestamp());
    }
}
