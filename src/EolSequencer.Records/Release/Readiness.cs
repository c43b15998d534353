using System.Collections.Immutable;
using EolSequencer.Records.Administration;
using EolSequencer.Records.Holds;
using EolSequencer.Records.Nonconformities;

namespace EolSequencer.Records.Release;

/// <summary>Whether a vehicle may be released, and what speaks against it.</summary>
/// <param name="Against">For people, one line each; empty: nothing.</param>
/// <param name="State"><c>released</c>, <c>returned</c> (released and a nonconformity opened since), or null: never released.</param>
/// <param name="Runs">The newest whole run at each station kind of the route that it was run at.</param>
public sealed record Readiness(string Vin, ImmutableArray<string> Route, ImmutableArray<string> Runs, ImmutableArray<string> Against, string? State)
{
    /// <summary>True when nothing speaks against it.</summary>
    public bool IsReady => Against.IsEmpty;

    internal static Readiness Of(IActView view, string vin, ImmutableArray<string> route)
    {
        var vehicle = view.Vehicle(vin);
        var against = ImmutableArray.CreateBuilder<string>();
        if (route.IsEmpty) against.Add("the plant names no route, so nothing tells when a vehicle is complete");
        foreach (var kind in route.Where(kind => vehicle.At(kind) is null)) against.Add($"station kind '{kind}' of the route: never run as a whole");
        foreach (var kind in vehicle.Kinds)
        {
            foreach (var run in kind.Unfinished) against.Add($"station kind '{kind.StationKind}': run {run} has not ended");
            foreach (var step in kind.Open) against.Add($"station kind '{kind.StationKind}': {step.Step} is {Model.Judging.Verdicts.Word(step.Counted)} in run {step.Run}");
            if (!kind.HasJudged) against.Add($"station kind '{kind.StationKind}': run {kind.Run.Run} judged nothing");
        }

        foreach (var part in vehicle.Parts.Where(part => !part.Replaced))
        {
            if (view.Elsewhere(part) is { } there) against.Add($"serial '{part.Serial}' of part {part.Name} is on {(there.Vin == part.Vin ? $"it twice, as {there.Name} too" : $"vehicle {there.Vin} too, by run {there.Run}")}");
        }

        foreach (var row in view.Nonconformities.Where("vin", vin).Where(row => row.IsOpen)) against.Add($"nonconformity {row.Id} ({row.Code}) is {row.State}");
        foreach (var hold in view.Holds.Where("state", HoldRow.IsPlaced).Where(hold => HoldMatch.Holds(view, Hold.QueryOf(hold), vin))) against.Add($"hold {hold.Id}: {hold.Placed.Reason}");
        return new Readiness(vin, route, [.. vehicle.Kinds.Where(kind => route.Contains(kind.StationKind)).Select(kind => kind.Run.Run)], against.ToImmutable(), view.Releases.Find(vin)?.State);
    }
}
