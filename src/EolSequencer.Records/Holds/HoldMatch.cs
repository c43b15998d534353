using EolSequencer.Model.Events;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;
using EolSequencer.Records.Administration;
using EolSequencer.Records.Reading;

namespace EolSequencer.Records.Holds;

/// <summary>Finds the vehicles of a query among the runs that count.</summary>
internal static class HoldMatch
{
    /// <summary>The vehicles, by number.</summary>
    public static IReadOnlyList<string> Vehicles(IActView view, HoldQuery query) =>
        [.. (NamesOnlyVehicles(query) ? query.Vins : Runs(view, query, null).Where(Matcher(view, query)).Select(run => run.Order.Vin.Text)).Distinct().Order(StringComparer.Ordinal)];

    /// <summary>Whether one vehicle is held.</summary>
    public static bool Holds(IActView view, HoldQuery query, string vin)
    {
        if (!query.Vins.IsEmpty && !query.Vins.Contains(vin)) return false;
        return NamesOnlyVehicles(query) || Runs(view, query, vin).Any(Matcher(view, query));
    }

    private static IEnumerable<RunBegun> Runs(IActView view, HoldQuery query, string? vin) =>
        view.RunsBegun(new RunFilter { Vin = vin, From = query.From, Until = query.Until, Station = query.Station, Most = int.MaxValue });

    private static bool NamesOnlyVehicles(HoldQuery query) => !query.Vins.IsEmpty && (query with { Vins = [] }).AsksNothing;

    private static Func<RunBegun, bool> Matcher(IActView view, HoldQuery query)
    {
        IReadOnlyList<string> withPart = query.Fact is { } part ? view.VehiclesWith(PartName.Read(part), query.Value!) : [];
        return run => Matches(query, run, withPart.Contains(run.Order.Vin.Text));
    }

    /// <param name="hasPart">Whether a part of that name with that serial is on the vehicle.</param>
    private static bool Matches(HoldQuery query, RunBegun run, bool hasPart) =>
        (query.Vins.IsEmpty || query.Vins.Contains(run.Order.Vin.Text))
        && (query.Fact is not { } fact || hasPart || Has(run, fact, query.Value!))
        && (query.Instrument is not { } instrument || run.Instruments.Any(one => one.Instrument == instrument))
        && (query.Program is not { } program || run.Program == program);

    private static bool Has(RunBegun run, string fact, string value) =>
        (run.Order.Facts.GetValueOrDefault(fact) ?? run.Order.Options.GetValueOrDefault(fact)) switch
        {
            ListValue list => list.Items.Contains(value),
            { } single => single.ToString() == value,
            null => false,
        };
}
