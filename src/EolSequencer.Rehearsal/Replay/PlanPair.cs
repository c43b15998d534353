using System.Collections.Concurrent;

namespace EolSequencer.Rehearsal.Replay;

/// <summary>What two revisions plan for vehicles that are alike, and where they differ; worked out once for all of them. From any thread.</summary>
internal sealed class PlanPair(Revision oldRevision, PlacedPlan old, Revision newRevision, PlacedPlan now)
{
    private readonly ConcurrentDictionary<string, StepDifferences> _differences = new(StringComparer.Ordinal);

    public PlacedPlan Old => old;

    public PlacedPlan New => now;

    /// <summary>Where a step that both have says something else.</summary>
    public StepDifferences Differences(PlacedStep before, PlacedStep after)
    {
        if (_differences.TryGetValue(after.Id, out var known)) return known;
        return _differences[after.Id] = ReferenceEquals(oldRevision, newRevision)
            ? StepDifferences.None
            : StepDifferences.Between(before, oldRevision.Sequence, after, newRevision.Sequence);
    }
}
