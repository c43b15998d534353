namespace EolSequencer.Model.Judging;

/// <summary>The measured verdict of every way a step can end. The one place where this is decided.</summary>
public static class VerdictTable
{
    /// <summary>The rule for a step of one kind that ended in one way.</summary>
    public static VerdictRule Rule(ActionKind action, Ending ending) => (action, ending) switch
    {
        (_, Ending.Lost or Ending.Stopped or Ending.NotReached or Ending.PassedOver) => VerdictRule.Inconclusive,
        (_, Ending.ExpressionFault) => VerdictRule.Error,

        (ActionKind.AskUntil or ActionKind.Await, Ending.ConditionTrue) => VerdictRule.Pass,
        (ActionKind.AskUntil or ActionKind.Await, Ending.ConditionFalseAtLimit) => VerdictRule.Fail,
        (ActionKind.AskUntil or ActionKind.Await, Ending.ConditionUnknownAtLimit) => VerdictRule.AsMissing,

        (ActionKind.Ask, Ending.Confirmed) => VerdictRule.None,
        (ActionKind.Judge, Ending.AnsweredOk) => VerdictRule.Pass,
        (ActionKind.Judge, Ending.AnsweredNotOk) => VerdictRule.Fail,
        (ActionKind.Ask or ActionKind.Judge or ActionKind.Enter or ActionKind.Choose or ActionKind.Scan, Ending.NoAnswer) => VerdictRule.Inconclusive,

        (ActionKind.Enter or ActionKind.Choose or ActionKind.Scan, Ending.ValueJudged) => VerdictRule.ByExpectation,
        (ActionKind.Enter or ActionKind.Choose or ActionKind.Scan, Ending.ValueTaken) => VerdictRule.None,

        (ActionKind.Read or ActionKind.Sample or ActionKind.Compute or ActionKind.Set or ActionKind.Do, Ending.ValueJudged) => VerdictRule.ByExpectation,
        (ActionKind.Read or ActionKind.Sample or ActionKind.Compute or ActionKind.Set or ActionKind.Do, Ending.ValueTaken) => VerdictRule.None,
        (ActionKind.Read or ActionKind.Sample or ActionKind.Compute or ActionKind.Set or ActionKind.Do, Ending.Missing) => VerdictRule.AsMissing,

        (ActionKind.Set or ActionKind.Do, Ending.Confirmed) => VerdictRule.None,
        (ActionKind.Wait, Ending.TimeOver) => VerdictRule.None,

        _ => VerdictRule.CannotHappen,
    };

    /// <summary>The measured verdict, where neither an expectation nor a missing reading decides.</summary>
    /// <param name="action">What the step does.</param>
    /// <param name="ending">How it ended.</param>
    /// <param name="byExpectation">The worst verdict of the step's criteria.</param>
    /// <param name="asMissing">The verdict of the reading that is missing, see <see cref="MissingCauses.Measured"/>.</param>
    /// <remarks>A pair that cannot happen is a broken assumption of the engine and throws.</remarks>
    public static Verdict Measured(ActionKind action, Ending ending, Verdict byExpectation, Verdict asMissing) => Rule(action, ending) switch
    {
        VerdictRule.None => Verdict.None,
        VerdictRule.Pass => Verdict.Pass,
        VerdictRule.Inconclusive => Verdict.Inconclusive,
        VerdictRule.Fail => Verdict.Fail,
        VerdictRule.Error => Verdict.Error,
        VerdictRule.ByExpectation => byExpectation,
        VerdictRule.AsMissing => asMissing,
        _ => throw new InvalidOperationException($"a step of kind {action} cannot end as {ending}"),
    };
}
