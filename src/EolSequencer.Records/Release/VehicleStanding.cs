using System.Collections.Immutable;
using EolSequencer.Model.Events;
using EolSequencer.Records.Administration;
using EolSequencer.Records.Correcting;
using EolSequencer.Records.History;
using EolSequencer.Records.Reading;

namespace EolSequencer.Records.Release;

/// <summary>What is recorded of one vehicle, as far as its release hangs on it.</summary>
/// <param name="Vins">All its numbers, the current one first.</param>
/// <param name="Kinds">Station kinds, in the order their newest whole runs began.</param>
/// <param name="Begun">First events of its runs that count, newest first.</param>
internal sealed record VehicleStanding(IReadOnlyList<string> Vins, ImmutableArray<KindProgress> Kinds, IReadOnlyList<RunBegun> Begun)
{
    public string Vin => Vins[0];

    /// <summary>The run whose order says what the vehicle is by now: a retest has that of the run it repeats. Null: it was never run.</summary>
    public RunBegun? Newest => Begun.FirstOrDefault(run => run.RetestOf is null) ?? Begun.FirstOrDefault();

    public KindProgress? At(string stationKind) => Kinds.FirstOrDefault(kind => kind.StationKind == stationKind);

    /// <param name="vin">Any of its numbers.</param>
    public static VehicleStanding Of(IActView view, string vin)
    {
        var vins = new VinTrail(view.Corrections).All(vin);
        return new VehicleStanding(vins, view.Progress(vins), [.. view.RunsBegun(new RunFilter { Vin = vins[0], Most = int.MaxValue })]);
    }

    /// <summary><c>released</c>, <c>returned</c>, or null: never released.</summary>
    public string? ReleaseState(IActView view) => Vins.Select(vin => view.Releases.Find(vin)?.State).FirstOrDefault(state => state is not null);
}
