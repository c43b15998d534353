using EolSequencer.Engine.Judging;
using EolSequencer.Engine.Planning;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Engine.Resuming;

/// <summary>
/// Which results do not count any more when a run goes on: those of <c>prepare</c>, <c>always</c> and <c>after-verdict</c>, of
/// groups that need continuity (<c>resume: repeat</c>, <c>capture</c>, <c>retry</c>) and were under way, and of a step that was to
/// be tried again or waited for a decision.
/// </summary>
internal sealed class Reopening(Plan plan, ResultBook results)
{
    private readonly Dictionary<string, (PlannedStep Planned, Judged Judged)> _last = new(StringComparer.Ordinal);

    /// <summary>A step has been judged.</summary>
    public void Note(PlannedStep planned, Judged judged) => _last[planned.Id] = (planned, judged);

    public void Run()
    {
        foreach (var (planned, judged) in _last.Values.ToList())
        {
            if (IsTriedAgain(planned.Step, judged)) Forget(planned.Id);
        }

        foreach (var node in Plan.NodesOf(plan.Steps).Where(IsCutShort)) ForgetAll(node);
        foreach (var step in Plan.StepsOf(plan.Prepare, plan.Always, plan.AfterVerdict)) Forget(step.Id);
    }

    private static bool IsTriedAgain(Step step, Judged judged) =>
        (step.Retry is { } retry && judged.Attempt <= retry.Times && retry.On.Contains(judged.Measured))
        || (step.OnFail == OnFail.Ask && judged.Counted > Verdict.Pass);

    private bool IsCutShort(PlannedNode planned)
    {
        if (planned is not (PlannedGroup or PlannedLanes)) return false;
        var node = planned is PlannedGroup group ? group.Group : ((PlannedLanes)planned).Node;
        var steps = Plan.StepsOf(planned);
        if (steps.All(step => results.IsOpen(step.Id))) return false;
        var isOver = steps.All(step => !results.IsOpen(step.Id));
        if (node is Group { RepeatOnResume: true } && !isOver) return true;
        if (!planned.Captures.IsEmpty && (!isOver || planned.Captures.Any(capture => results.FindTrace(planned.Id, capture.Name) is null))) return true;
        return node.Retry is { } retry && (!isOver || (steps.Min(step => results.AttemptsOf(step.Id)) <= retry.Times && retry.On.Contains(Worst(steps))));
    }

    private Verdict Worst(IEnumerable<PlannedStep> steps) => Verdicts.Worst(steps.Select(step => results.Counted(step.Id) ?? Verdict.None));

    private void ForgetAll(PlannedNode node)
    {
        foreach (var step in Plan.StepsOf(node)) Forget(step.Id);
    }

    private void Forget(string step)
    {
        results.Forget(step);
        _last.Remove(step);
    }
}
