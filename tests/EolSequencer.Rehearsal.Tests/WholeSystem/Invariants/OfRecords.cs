using EolSequencer.Model.Events;
using EolSequencer.Records.Tests.Samples;
using EolSequencer.Rehearsal.Tests.WholeSystem.Stories;

namespace EolSequencer.Rehearsal.Tests.WholeSystem.Invariants;

/// <summary>What holds of the record, whatever happens to program and disk.</summary>
internal static class OfRecords
{
    public static Invariant[] All { get; } =
    [
        Invariant.OfEach("what was reported is kept", NothingIsLost),
        Invariant.OfEach("what is kept is what was told", NothingIsMadeUp),
        Invariant.OfEach("what is shown is kept", ShownIsKept),
        Invariant.OfEach("a healthy disk keeps everything", HealthyDiskKeeps),
        Invariant.OfEach("a run ends once, with its last event", EndsOnce),
        new("chain, ledger and tables are whole", IsWhole),
        new("a run that broke off is told as such", BrokenOffIsTold),
    ];

    private static IEnumerable<string> NothingIsLost(TestedVehicle vehicle)
    {
        var kept = vehicle.Recorded?.Length ?? 0;
        if (kept < vehicle.Reported) yield return $"{vehicle.Reported} events were reported, {kept} are kept";
    }

    private static IEnumerable<string> NothingIsMadeUp(TestedVehicle vehicle)
    {
        if (vehicle.Recorded is not { } kept) yield break;
        // The event that was under way when disk or program failed may be there, as a whole.
        var most = vehicle.Reported + (vehicle.Result.Fault is null ? 0 : 1);
        if (kept.Length > most) yield return $"{kept.Length} events are kept, at most {most} can be";
        for (var at = 0; at < Math.Min(kept.Length, vehicle.Told.Length); at++)
        {
            if (!Structural.AreEqual(vehicle.Told[at].Event, kept[at])) yield return $"told was {vehicle.Told[at].Event}, kept is {kept[at]}";
        }
    }

    private static IEnumerable<string> ShownIsKept(TestedVehicle vehicle)
    {
        if (vehicle.Shown != vehicle.Reported) yield return $"{vehicle.Reported} events were reported, {vehicle.Shown} shown";
    }

    private static IEnumerable<string> HealthyDiskKeeps(TestedVehicle vehicle)
    {
        if (vehicle.Story.Disk is null && vehicle.Result.Fault is { } fault) yield return fault;
    }

    private static IEnumerable<string> EndsOnce(TestedVehicle vehicle)
    {
        if (vehicle.Recorded is not { } kept) yield break;
        var ends = kept.Count(one => one is RunEnded);
        if (ends > 1) yield return $"it has {ends} ends";
        if (ends > 0 && kept[^1] is not RunEnded) yield return "something stands behind its end";
        if (ends == 0 && vehicle.Result.Fault is null) yield return "it has no end";
        if (kept.Count(one => one is RunBegun) != 1 || kept[0] is not RunBegun) yield return "it does not begin once, with its first event";
    }

    private static IEnumerable<string> IsWhole(PlayedStory story)
    {
        foreach (var (opening, number) in story.Openings.Select((opening, number) => (opening, number + 1)))
        {
            foreach (var finding in opening.Findings) yield return $"at start {number} of the program: {finding}";
        }

        foreach (var finding in story.Verified.Findings) yield return finding.ToString();
    }

    private static IEnumerable<string> BrokenOffIsTold(PlayedStory story)
    {
        var brokenOff = story.Vehicles.Where(vehicle => vehicle.TakenUp.IsEmpty && vehicle.Recorded is [.., not RunEnded]).Select(vehicle => vehicle.Run).Order().ToList();
        if (!story.Verified.Unfinished.Order().SequenceEqual(brokenOff)) yield return $"broke off: {string.Join(", ", brokenOff)}; told: {string.Join(", ", story.Verified.Unfinished)}";
        var listed = story.Runs.Where(run => run.End is null).Select(run => run.Run).Order().ToList();
        if (!listed.SequenceEqual(brokenOff)) yield return $"broke off: {string.Join(", ", brokenOff)}; listed without an end: {string.Join(", ", listed)}";
    }
}
