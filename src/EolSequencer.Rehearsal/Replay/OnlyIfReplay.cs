using EolSequencer.Engine.Judging;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Values;

namespace EolSequencer.Rehearsal.Replay;

/// <summary>Whether a step would have been needed, by its own <c>only-if</c> and those around it.</summary>
internal sealed class OnlyIfReplay(RecordJudge judge, ReplayHistory history)
{
    /// <param name="wasNeeded">As recorded.</param>
    /// <returns>Whether it would have been; null with the reason when the record does not tell.</returns>
    public (bool? IsNeeded, string? Why) Decide(PlacedStep now, StepDifferences differences, bool wasNeeded)
    {
        if (!now.HasOnlyIf && wasNeeded) return (true, null);
        var open = false;
        foreach (var (planned, node) in now.Nodes)
        {
            if (node.OnlyIf is not { } condition) continue;
            if (history.Blocked(condition, planned) is { } blocked) return (null, blocked);
            if (condition.Channels.IsEmpty)
            {
                if (IsTrue(condition, planned) is not { } truth) return (wasNeeded, null); // It had no value then either: a fault of the step.
                if (!truth) return (false, null);
                continue;
            }

            if (differences.OnlyIf) return (null, "whether it is needed (only-if) reads otherwise");
            if (history.HasChanged(condition, planned)) return (null, "a result that decides whether it is needed (only-if) has changed");
            open = true;
        }

        if (wasNeeded || open) return (wasNeeded, null);
        return (null, "it was not needed then, so nothing was recorded");
    }

    private bool? IsTrue(Expression condition, Engine.Planning.PlannedNode planned)
    {
        try
        {
            return judge.Evaluate(condition, planned) is TruthValue { IsTrue: true };
        }
        catch (ExpressionFault)
        {
            return null;
        }
    }
}
