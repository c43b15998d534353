using System.Collections.Immutable;
using EolSequencer.Model.Judging;
using EolSequencer.Records.Administration;
using EolSequencer.Records.History;
using EolSequencer.Records.Holds;
using EolSequencer.Records.Nonconformities;

namespace EolSequencer.Records.Release;

/// <summary>Finds what keeps vehicles from being released; the holds are read once for all of them.</summary>
internal sealed class Obstacles(IActView view)
{
    private readonly List<(HoldRow Row, HoldMatch Match)> _holds = [.. view.Holds.Where("state", HoldRow.IsPlaced).Select(row => (row, new HoldMatch(view, Hold.QueryOf(row))))];

    /// <param name="vin">The number by which it is asked for.</param>
    /// <param name="route">The station kinds that the vehicle must pass.</param>
    public IEnumerable<Obstacle> Of(VehicleStanding vehicle, string vin, ImmutableArray<string> route) =>
        [.. OfNumber(vehicle, vin), .. OfRoute(vehicle, route), .. vehicle.Kinds.SelectMany(OfKind), .. OfOrders(vehicle, route), .. OfParts(vehicle), .. OfNonconformities(vehicle), .. OfHolds(vehicle)];

    private static IEnumerable<Obstacle> OfNumber(VehicleStanding vehicle, string vin) =>
        vehicle.Vin == vin ? [] : [new Obstacle("number", $"{vin} was corrected to {vehicle.Vin}; release that number", "quality", "release that number")];

    private static IEnumerable<Obstacle> OfRoute(VehicleStanding vehicle, ImmutableArray<string> route)
    {
        if (route.IsEmpty) yield return new Obstacle("route", "the plant names no route, so nothing tells when a vehicle is complete", "engineer", "write the route in plant.yaml");
        foreach (var kind in route.Where(kind => vehicle.At(kind) is null)) yield return new Obstacle("route", $"station kind '{kind}' of the route: never run as a whole", "operator", $"run it at {kind}");
    }

    private static IEnumerable<Obstacle> OfKind(KindProgress kind)
    {
        foreach (var run in kind.Unfinished) yield return new Obstacle("run", $"station kind '{kind.StationKind}': run {run} has not ended", "operator", "identify it again at its station");
        foreach (var step in kind.Open) yield return new Obstacle("step", $"station kind '{kind.StationKind}': {step.Step} is {step.Counted.Word()} in run {step.Run}", "operator", $"retest {kind.Run}");
        if (!kind.HasJudged) yield return new Obstacle("run", $"station kind '{kind.StationKind}': run {kind.Run} judged nothing", "operator", $"run it at {kind.StationKind}");
    }

    /// <summary>What was judged with other options than the vehicle has by its newest run says nothing about it.</summary>
    private static IEnumerable<Obstacle> OfOrders(VehicleStanding vehicle, ImmutableArray<string> route)
    {
        foreach (var kind in vehicle.Kinds.Where(kind => route.Contains(kind.StationKind)))
        {
            var changed = vehicle.Begun.Where(run => run.Run == kind.Run).SelectMany(run => OrderDifference.OfVehicle(run.Order, vehicle.Newest!.Order)).ToList();
            if (changed.Count == 0) continue;
            yield return new Obstacle(
                "order", $"station kind '{kind.StationKind}': run {kind.Run} was for another order than run {vehicle.Newest!.Run} ({string.Join(", ", changed)}); run it there again", "operator", $"run it at {kind.StationKind}");
        }
    }

    private IEnumerable<Obstacle> OfParts(VehicleStanding vehicle) => view.SharedParts(vehicle.Vins).Select(part => new Obstacle(
        "part",
        $"serial '{part.Here.Serial}' of part {part.Here.Name} is on {(part.There.Vin == part.Here.Vin ? $"it twice, as {part.There.Name} too" : $"vehicle {part.There.Vin} too, by run {part.There.Run}")}",
        "repairer",
        "find out which part is where, then run one of them again"));

    private IEnumerable<Obstacle> OfNonconformities(VehicleStanding vehicle) => view.Nonconformities.OfVehicle(vehicle.Vins).Where(row => row.IsOpen).Select(row =>
    {
        var (who, next) = (row.State, row.Finding) switch
        {
            (NonconformityStates.Open, _) => ("repairer", "rework or repair it"),
            (NonconformityStates.WantsConcession, _) => ("quality", "give a concession"),
            (_, { } finding) => ("operator", $"retest it at {finding.StationKind}"),
            _ => ("quality", "inspect it"),
        };
        return new Obstacle("nonconformity", $"nonconformity {row.Id} ({row.Code}) is {row.State}", who, next);
    });

    private IEnumerable<Obstacle> OfHolds(VehicleStanding vehicle) =>
        _holds.Where(hold => hold.Match.Holds(vehicle.Vin, vehicle.Begun)).Select(hold => new Obstacle("hold", $"hold {hold.Row.Id}: {hold.Row.Placed.Reason}", "quality", "lift the hold"));
}
