using EolSequencer.Engine.Planning;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Engine.Judging;

/// <summary>The criteria of a step: the same whether its values are found now or come from a record.</summary>
internal static class StepJudging
{
    /// <summary>A value that the step found, judged where something is expected of it.</summary>
    /// <param name="of">Which: empty for the step's one value, or an index.</param>
    public static CriterionResult Value(PlannedStep planned, RunScope scope, string of, Value value) => planned.Expect is { } expect
        ? new ValueJudge(scope, planned.Step.Decision, planned.Step.Uncertainty, planned.Step.ExpectIsRecordOnly).Judge(of, value, expect)
        : ValueJudge.Unjudged(of, value);

    /// <summary>A value that is missing.</summary>
    public static CriterionResult Missing(PlannedStep planned, string of, Verdict verdict) => ValueJudge.Missing(of, verdict, planned.Step.ExpectIsRecordOnly);

    /// <summary>The time that <c>takes</c> judges; null when it judges none.</summary>
    public static CriterionResult? Time(PlannedStep planned, RunScope scope, decimal seconds) => planned.Step.Takes is { } expect
        ? new ValueJudge(scope, Decision.Simple, null, planned.Step.TakesIsRecordOnly).Judge("takes", new NumberValue(seconds, UnitTable.Second), expect)
        : null;
}
