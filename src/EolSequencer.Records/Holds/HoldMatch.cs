using EolSequencer.Model.Events;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;
using EolSequencer.Records.Administration;
using EolSequencer.Records.Correcting;
using EolSequencer.Records.Reading;

namespace EolSequencer.Records.Holds;

/// <summary>Finds the vehicles of a query among the runs that count, each by the number that it has by now.</summary>
internal sealed class HoldMatch
{
    private readonly IActView _view;
    private readonly HoldQuery _query;
    private readonly VinTrail _trail;
    private readonly HashSet<string> _named;
    private readonly IReadOnlyList<string> _withPart;

    public HoldMatch(IActView view, HoldQuery query)
    {
        (_view, _query, _trail) = (view, query, new VinTrail(view.Corrections));
        _named = query.Vins.Select(_trail.Current).ToHashSet(StringComparer.Ordinal);
        _withPart = query.Fact is { } part ? view.VehiclesWith(PartName.Read(part), query.Value!) : [];
    }

    /// <summary>Whether the query asks for nothing but vehicles by their numbers.</summary>
    private bool NamesOnlyVehicles => _named.Count > 0 && (_query with { Vins = [] }).AsksNothing;

    /// <summary>The vehicles, by number.</summary>
    public IReadOnlyList<string> Vehicles() =>
        [.. (NamesOnlyVehicles ? _named : Runs().Where(Matches).Select(run => _trail.Current(run.Order.Vin.Text))).Distinct().Order(StringComparer.Ordinal)];

    /// <summary>Whether one vehicle is held.</summary>
    /// <param name="vin">The number that it has by now.</param>
    /// <param name="begun">The beginnings of its runs that count.</param>
    public bool Holds(string vin, IEnumerable<RunBegun> begun)
    {
        if (_named.Count > 0 && !_named.Contains(vin)) return false;
        return NamesOnlyVehicles || begun.Any(run => IsAsked(run) && Matches(run));
    }

    private bool IsAsked(RunBegun run) =>
        (_query.From is not { } from || run.Wall >= from) && (_query.Until is not { } until || run.Wall < until) && (_query.Station is not { } station || run.Station == station);

    private IEnumerable<RunBegun> Runs() =>
        _view.RunsBegun(new RunFilter { From = _query.From, Until = _query.Until, Station = _query.Station, Most = int.MaxValue });

    private bool Matches(RunBegun run) =>
        (_named.Count == 0 || _named.Contains(_trail.Current(run.Order.Vin.Text)))
        && (_query.Fact is not { } fact || Has(run, fact, _query.Value!) || _withPart.Contains(_trail.Current(run.Order.Vin.Text)))
        && (_query.Instrument is not { } instrument || run.Instruments.Any(one => one.Instrument == instrument))
        && (_query.Program is not { } program || run.Program == program);

    private static bool Has(RunBegun run, string fact, string value) =>
        (run.Order.Facts.GetValueOrDefault(fact) ?? run.Order.Options.GetValueOrDefault(fact)) switch
        {
            ListValue list => list.Items.Contains(value),
            { } single => single.ToString() == value,
            null => false,
        };
}
