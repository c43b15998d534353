using EolSequencer.Engine.Judging;
using EolSequencer.Engine.Planning;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;

namespace EolSequencer.Rehearsal.Replay;

/// <summary>
/// <c>compute</c> again: from results and traces it is computed anew. What it reads itself the record has as bytes only, so
/// then the value found counts as long as nothing it is made of has changed.
/// </summary>
internal sealed class ComputeReplay(RecordJudge judge, ReplayHistory history)
{
    public Replayable EndOf(PlannedStep now, StepAction.Compute compute, StepDifferences differences, LimitChange limit, RecordedAttempt attempt)
    {
        var expression = compute.Expression;
        if (history.Blocked(expression, now) is { } blocked) return Replayable.Undecidable(blocked);
        if (limit.IsShorter && attempt.Took > limit.New) return new RecordedEnd(Ending.ExpressionFault, attempt.Took);
        if (expression.Channels.IsEmpty) return Again(now, compute, attempt);

        var reads = expression.Channels[0].Resolve(now.Arguments);
        if (differences.Formula) return Replayable.Undecidable($"it computes otherwise, and its reading of {reads} was recorded as bytes only");
        if (history.HasChanged(expression, now)) return Replayable.Undecidable($"a result it is made of has changed, and its reading of {reads} was recorded as bytes only");
        if (attempt.Judged.Cause is { } cause) return MissingRule.EndOf(attempt.Judged.Measured, cause, now.Step, now.Step, limit, attempt.Took);
        if (attempt.IsFault) return differences.Expect || limit.IsChanged ? Replayable.Undecidable("an expression had no value") : new RecordedEnd(Ending.ExpressionFault, attempt.Took);
        return RecordedValue.Of(attempt.Judged.Criteria[0], expression.Shape.Kind) is { } value
            ? new RecordedEnd(Ending.ValueTaken, attempt.Took) { Value = value }
            : Replayable.Undecidable("its value was not recorded");
    }

    private Replayable Again(PlannedStep now, StepAction.Compute compute, RecordedAttempt attempt)
    {
        try
        {
            var value = judge.Evaluate(compute.Expression, now);
            if (value is NumberValue { Unit: null } bare && compute.Unit is not null) value = bare with { Unit = compute.Unit };
            return new RecordedEnd(Ending.ValueTaken, attempt.Took) { Value = value };
        }
        catch (ExpressionFault)
        {
            return new RecordedEnd(Ending.ExpressionFault, attempt.Took);
        }
    }
}
