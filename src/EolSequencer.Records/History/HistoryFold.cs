using System.Collections.Immutable;
using EolSequencer.Model.Judging;
using EolSequencer.Records.Reading;

namespace EolSequencer.Records.History;

/// <summary>What one run found, every attempt in order, and what it was to find and did not reach.</summary>
/// <param name="NotCounted">Steps behind the verdict.</param>
internal sealed record RunFound(RunSummary Run, ImmutableArray<StepSummary> Attempts, ImmutableArray<string> NotReached, ImmutableArray<string> NotCounted);

/// <summary>Makes the table of steps of a vehicle at a station kind.</summary>
internal static class HistoryFold
{
    /// <param name="whole">The newest whole run.</param>
    /// <param name="retests">The retests that name it, oldest first.</param>
    /// <param name="concessions">Ids of conceded nonconformities by step and the run that found it.</param>
    public static StationKindState Of(RunFound whole, IReadOnlyList<RunFound> retests, IReadOnlyDictionary<(string Step, string Run), string> concessions)
    {
        var order = new List<string>();
        var steps = new Dictionary<string, StepState>(StringComparer.Ordinal);
        foreach (var run in retests.Prepend(whole)) Add(run, isWhole: run == whole, order, steps);
        return new StationKindState { Run = whole.Run, Retests = [.. retests.Select(run => run.Run)], Steps = [.. order.Select(step => steps[step]).Select(step => step with { Concession = concessions.GetValueOrDefault((step.Step, step.Run)) })] };
    }

    private static void Add(RunFound run, bool isWhole, List<string> order, Dictionary<string, StepState> steps)
    {
        foreach (var attempt in run.Attempts)
        {
            if (run.NotCounted.Contains(attempt.Step)) continue;
            // Attempts are counted from 1 within a run; the first in the whole run is the one for first-time-through.
            var known = Known(attempt.Step, order, steps);
            var first = isWhole && known is null ? attempt.Counted : known?.First;
            steps[attempt.Step] = new StepState(attempt.Step, attempt.Counted, run.Run.Run, first, attempt);
        }

        // What a retest was to repeat and did not reach is not shown to be in order, whatever was found before.
        foreach (var step in run.NotReached)
        {
            var known = Known(step, order, steps);
            if (isWhole && known is not null) continue;
            steps[step] = new StepState(step, Verdict.Inconclusive, run.Run.Run, known?.First, null);
        }
    }

    private static StepState? Known(string step, List<string> order, Dictionary<string, StepState> steps)
    {
        if (steps.TryGetValue(step, out var known)) return known;
        order.Add(step);
        return null;
    }
}
