using System.Collections.Immutable;
using EolSequencer.Records.Administration;
using EolSequencer.Records.Correcting;
using EolSequencer.Records.History;
using EolSequencer.Records.Holds;
using EolSequencer.Records.Nonconformities;
using EolSequencer.Records.Reading;

namespace EolSequencer.Records.Release;

/// <summary>Whether a vehicle may be released, and what speaks against it.</summary>
/// <param name="Against">For people, one line each; empty: nothing.</param>
/// <param name="State"><c>released</c>, <c>returned</c> (released, and since then run again, a nonconformity opened, or the number corrected), or null: never released.</param>
/// <param name="Runs">The newest whole run at each station kind of the route that it was run at.</param>
public sealed record Readiness(string Vin, ImmutableArray<string> Route, ImmutableArray<string> Runs, ImmutableArray<string> Against, string? State)
{
    /// <summary>True when nothing speaks against it.</summary>
    public bool IsReady => Against.IsEmpty;

    internal static Readiness Of(IActView view, string vin, ImmutableArray<string> route)
    {
        var vehicle = view.Vehicle(vin);
        var vins = new VinTrail(view.Corrections).All(vin);
        var against = ImmutableArray.CreateBuilder<string>();
        if (vehicle.Vin != vin) against.Add($"{vin} was corrected to {vehicle.Vin}; release that number");
        if (route.IsEmpty) against.Add("the plant names no route, so nothing tells when a vehicle is complete");
        foreach (var kind in route.Where(kind => vehicle.At(kind) is null)) against.Add($"station kind '{kind}' of the route: never run as a whole");
        foreach (var kind in vehicle.Kinds)
        {
            foreach (var run in kind.Unfinished) against.Add($"station kind '{kind.StationKind}': run {run} has not ended");
            foreach (var step in kind.Open) against.Add($"station kind '{kind.StationKind}': {step.Step} is {Model.Judging.Verdicts.Word(step.Counted)} in run {step.Run}");
            if (!kind.HasJudged) against.Add($"station kind '{kind.StationKind}': run {kind.Run.Run} judged nothing");
        }

        AddOtherOrders(view, vehicle, route, against);
        foreach (var part in vehicle.Parts.Where(part => !part.Replaced))
        {
            if (view.Elsewhere(part) is { } there) against.Add($"serial '{part.Serial}' of part {part.Name} is on {(there.Vin == part.Vin ? $"it twice, as {there.Name} too" : $"vehicle {there.Vin} too, by run {there.Run}")}");
        }

        foreach (var row in vins.SelectMany(one => view.Nonconformities.Where("vin", one)).Where(row => row.IsOpen)) against.Add($"nonconformity {row.Id} ({row.Code}) is {row.State}");
        foreach (var hold in view.Holds.Where("state", HoldRow.IsPlaced).Where(hold => new HoldMatch(view, Hold.QueryOf(hold)).Holds(vin))) against.Add($"hold {hold.Id}: {hold.Placed.Reason}");
        return new Readiness(vin, route, [.. vehicle.Kinds.Where(kind => route.Contains(kind.StationKind)).Select(kind => kind.Run.Run)], against.ToImmutable(), vins.Select(one => view.Releases.Find(one)?.State).FirstOrDefault(state => state is not null));
    }

    /// <summary>What was judged with other options than the vehicle has by its newest run says nothing about it.</summary>
    private static void AddOtherOrders(IActView view, VehicleState vehicle, ImmutableArray<string> route, ImmutableArray<string>.Builder against)
    {
        if (vehicle.Kinds.IsEmpty) return;
        var begun = view.RunsBegun(new RunFilter { Vin = vehicle.Vin, Most = int.MaxValue }).ToList();
        var newest = begun.FirstOrDefault(run => run.RetestOf is null) ?? begun[0];
        foreach (var kind in vehicle.Kinds.Where(kind => route.Contains(kind.StationKind)))
        {
            var changed = begun.Where(run => run.Run == kind.Run.Run).SelectMany(run => OrderDifference.OfVehicle(run.Order, newest.Order)).ToList();
            if (changed.Count > 0) against.Add($"station kind '{kind.StationKind}': run {kind.Run.Run} was for another order than run {newest.Run} ({string.Join(", ", changed)}); run it there again");
        }
    }
}
