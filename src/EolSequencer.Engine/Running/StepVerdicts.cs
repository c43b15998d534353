using EolSequencer.Engine.Actions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Engine.Running;

/// <summary>What a step's end means: what was found, and what it counts for.</summary>
internal static class StepVerdicts
{
    public static (Verdict Measured, Verdict Counted) Of(Step step, AttemptEnd end)
    {
        var kind = KindOf(step.Action);
        var all = Verdict.None;
        var counting = Verdict.None;
        foreach (var criterion in end.Criteria)
        {
            all = Verdicts.Worst(all, criterion.Verdict);
            if (!criterion.RecordOnly) counting = Verdicts.Worst(counting, criterion.Verdict);
        }

        var measured = Verdicts.Worst(VerdictTable.Measured(kind, end.Ending, all, end.AsMissing), all);
        var counted = Verdicts.Worst(VerdictTable.Measured(kind, end.Ending, counting, end.AsMissing), counting);
        return (measured, step.RecordOnly ? Verdict.None : counted);
    }

    private static ActionKind KindOf(StepAction action) => action switch
    {
        StepAction.Ask ask => ask.Until is null ? ActionKind.Ask : ActionKind.AskUntil,
        StepAction.Judge => ActionKind.Judge,
        StepAction.Enter => ActionKind.Enter,
        StepAction.Choose => ActionKind.Choose,
        StepAction.Scan => ActionKind.Scan,
        StepAction.Read => ActionKind.Read,
        StepAction.Sample => ActionKind.Sample,
        StepAction.Await => ActionKind.Await,
        StepAction.Wait => ActionKind.Wait,
        StepAction.SetTo => ActionKind.Set,
        StepAction.Do => ActionKind.Do,
        StepAction.Compute => ActionKind.Compute,
        _ => throw new InvalidOperationException($"unknown action {action.GetType().Name}"),
    };
}
