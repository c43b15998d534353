using System.Collections.Concurrent;
using EolSequencer.Model.Events;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Rehearsal.Replay;

/// <summary>A checked sequence to judge by, with what is worked out once for many runs. May be used from several threads.</summary>
public sealed class Revision(CheckedSequence sequence)
{
    private readonly ConcurrentDictionary<(Revision Old, string Step), Compared> _compared = [];

    public CheckedSequence Sequence => sequence;

    internal PlacedPlan PlanFor(RunBegun begun) => PlacedPlan.Of(sequence, begun.Order, begun.OnlySteps);

    /// <summary>Where a step says something else than in an earlier revision.</summary>
    internal StepDifferences DifferencesFrom(Revision old, PlacedStep before, PlacedStep after)
    {
        if (ReferenceEquals(this, old)) return Same;
        var key = (old, after.Id);
        if (_compared.TryGetValue(key, out var known) && known.Holds(before, after)) return known.Differences;
        var differences = StepDifferences.Between(before, old.Sequence, after, sequence);
        _compared[key] = new Compared(before, after, differences);
        return differences;
    }

    private static StepDifferences Same { get; } = new(null, false, false, false, false, false, false);

    /// <summary>What was found once holds as long as the names in force have the same values and the same limits were picked.</summary>
    private sealed record Compared(PlacedStep Before, PlacedStep After, StepDifferences Differences)
    {
        public bool Holds(PlacedStep before, PlacedStep after) => IsAlike(Before, before) && IsAlike(After, after);

        private static bool IsAlike(PlacedStep known, PlacedStep other) =>
            ReferenceEquals(known, other)
            || (ReferenceEquals(known.Planned.Expect, other.Planned.Expect) && known.Planned.Arguments.Has(other.Planned.Arguments)
                && known.Around.Length == other.Around.Length && known.Around.Zip(other.Around).All(pair => pair.First.Arguments.Has(pair.Second.Arguments)));
    }
}
