using EolSequencer.Records.Administration;
using EolSequencer.Records.Canonical;
using EolSequencer.Records.Reading;

namespace EolSequencer.Records.SequenceControl;

/// <summary>
/// Which approval a production run goes by. Trials that name the vehicle go before all others; of several the one given last wins,
/// because it was decided knowing the others. Withdrawn ones count as if they had never been given.
/// </summary>
internal static class InForce
{
    /// <summary>The approval in force for a vehicle at a station; null: none, and no production run may begin.</summary>
    public static ApprovalRow? At(IActView view, ApprovalQuery query) => view.Approvals.Where("state", ApprovalRow.IsGiven)
        .Where(one => one.Approved.VehicleType == query.VehicleType && Covers(view, one, query))
        .OrderByDescending(one => !one.Approved.Vins.IsEmpty)
        .ThenByDescending(one => one.Id, StringComparer.Ordinal)
        .FirstOrDefault();

    /// <summary>The newest approval by which this text may still be used for the vehicle, although another may be in force by now; null: none.</summary>
    public static ApprovalRow? Standing(IActView view, string hash, ApprovalQuery query) =>
        view.Approvals.Where("state", ApprovalRow.IsGiven).LastOrDefault(one => one.Approved.Hash == hash && Covers(view, one, query));

    private static bool Covers(IActView view, ApprovalRow row, ApprovalQuery query)
    {
        var approved = row.Approved;
        if (approved.StationKind != query.StationKind || UtcText.Read(approved.From) > query.Moment) return false;
        if (approved.Station is { } station && station != query.Station) return false;
        if (!approved.Vins.IsEmpty) return approved.Vins.Contains(query.Vin);
        return approved.FromVehicle is not { } first || first == query.Vin || HasBegun(view, first, approved.StationKind, approved.Station);
    }

    /// <summary>Whether a vehicle had a production run at the stations of an approval.</summary>
    internal static bool HasBegun(IActView view, string vin, string stationKind, string? station) =>
        view.RunsBegun(new RunFilter { Vin = vin, StationKind = stationKind, Station = station, Most = 1 }).Any();
}
