using System.Collections.Immutable;
using EolSequencer.Engine.Planning;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Records.Tests.Samples;

namespace EolSequencer.Rehearsal.Tests.WholeSystem.Invariants;

/// <summary>What holds of runs that broke off and were taken up again.</summary>
internal static class OfTakeovers
{
    private static readonly string[] Safe = ["bus.return_control", "bus.default_session"];

    public static Invariant[] All { get; } =
    [
        Invariant.OfEach("once everything is over, a run has one end", HasOneEnd),
        Invariant.OfEach("taking up adds, and changes nothing before it", Adds),
        Invariant.OfEach("a vehicle is left safe first, and nothing else moves", IsLeftSafe),
        Invariant.OfEach("nothing is judged twice but what has to be done again", JudgedOnce),
        Invariant.OfEach("a run that does not go on releases nothing", ReleasesNothing),
        Invariant.OfEach("the whole of a run that was taken up comes to the sum of its steps", Sum),
    ];

    private static IEnumerable<string> HasOneEnd(TestedVehicle vehicle)
    {
        if (vehicle.AtLast is not { } kept) yield break;
        if (kept.Count(one => one is RunEnded) is not 1 and var ends) yield return $"it has {ends} ends";
        if (kept[^1] is not RunEnded) yield return $"its last event is {kept[^1]}";
    }

    private static IEnumerable<string> Adds(TestedVehicle vehicle)
    {
        if (vehicle.AtLast is not { } kept || vehicle.Recorded is not { } first) yield break;
        var all = first.Concat(vehicle.TakenUp.SelectMany(part => part.Told)).ToList();
        if (all.Count != kept.Length) yield return $"{kept.Length} events are kept, {all.Count} were";
        foreach (var (told, found) in all.Zip(kept))
        {
            if (!Structural.AreEqual(told, found)) yield return $"told was {told}, kept is {found}";
        }

        foreach (var (next, number) in kept.Select((next, at) => (next, at + 1)))
        {
            if (next.N != number) yield return $"event {next.N} stands at {number}";
            if (number > 1 && next.At < kept[number - 2].At) yield return $"event {number} is stamped before the one in front of it";
        }
    }

    private static IEnumerable<string> IsLeftSafe(TestedVehicle vehicle)
    {
        foreach (var part in vehicle.TakenUp.Where(part => part.For == ResumedFor.Safety))
        {
            if (!part.Tried.TakeLast(2).SequenceEqual(Safe)) yield return $"last was tried: {string.Join(", ", part.Tried.TakeLast(2))}";
            foreach (var other in part.Tried.Except(Safe).Where(action => !action.EndsWith(" = no", StringComparison.Ordinal))) yield return $"{other} by itself";
        }

        var goesOn = vehicle.TakenUp.ToList().FindIndex(part => part.For == ResumedFor.Steps);
        if (goesOn >= 0 && !vehicle.TakenUp.Take(goesOn).Any(part => part.For == ResumedFor.Safety)) yield return "it goes on and was not left safe before";
    }

    private static IEnumerable<string> JudgedOnce(TestedVehicle vehicle)
    {
        var again = DoneAgain(vehicle.Plan);
        foreach (var part in vehicle.TakenUp.Where(part => part.For == ResumedFor.Steps))
        {
            var before = part.Past.OfType<Judged>().Select(judged => judged.Step).ToHashSet();
            foreach (var step in part.Told.OfType<Judged>().Select(judged => judged.Step).Where(step => before.Contains(step) && !again.Contains(step))) yield return step;
        }
    }

    /// <summary>Steps that may have to be done again: prepare, always and what follows the verdict, what needs continuity, what was to be tried again or decided.</summary>
    private static ImmutableHashSet<string> DoneAgain(Plan plan) =>
    [
        .. Plan.StepsOf(plan.Prepare, plan.Always, plan.AfterVerdict).Select(step => step.Id),
        .. Plan.NodesOf(plan.Steps).Where(node => !node.Captures.IsEmpty || node is PlannedGroup { Group: { RepeatOnResume: true } or { Retry: not null } }).SelectMany(node => Plan.StepsOf(node)).Select(step => step.Id),
        .. Plan.NodesOf(plan.Steps).OfType<PlannedGroup>().SelectMany(group => Plan.StepsOf(group.Always)).Select(step => step.Id),
        .. plan.Counting.Where(step => step.Step.Retry is not null || step.Step.OnFail == OnFail.Ask).Select(step => step.Id),
    ];

    private static IEnumerable<string> ReleasesNothing(TestedVehicle vehicle)
    {
        foreach (var ended in vehicle.TakenUp.Where(part => part.For == ResumedFor.End).Select(part => part.Told.OfType<RunEnded>().SingleOrDefault()))
        {
            if (ended is not { Interrupted: true, RollUp.Releases: false }) yield return $"it ended with {ended}";
        }
    }

    private static IEnumerable<string> Sum(TestedVehicle vehicle)
    {
        if (vehicle.TakenUp.IsEmpty || vehicle.AtLast is not [.., RunEnded end] kept) yield break;
        var sum = OfVerdicts.SumOf(vehicle.Plan, kept, end);
        if (end.RollUp != sum) yield return $"it came to {end.RollUp}, its steps to {sum}";
    }
}
