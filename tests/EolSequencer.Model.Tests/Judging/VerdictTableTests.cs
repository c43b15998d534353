using EolSequencer.Model.Judging;
using static EolSequencer.Model.Judging.ActionKind;
using static EolSequencer.Model.Judging.Ending;

namespace EolSequencer.Model.Tests.Judging;

/// <summary>Every row of the table of actions and endings, and proof that no other pair can end a step.</summary>
public class VerdictTableTests
{
    /// <summary>What may happen to a step of any kind.</summary>
    private static readonly Dictionary<Ending, VerdictRule> OfEveryKind = new()
    {
        [Lost] = VerdictRule.Inconclusive,
        [Stopped] = VerdictRule.Inconclusive,
        [NotReached] = VerdictRule.Inconclusive,
        [PassedOver] = VerdictRule.Inconclusive,
        [ExpressionFault] = VerdictRule.Error,
    };

    private static readonly Dictionary<(ActionKind, Ending), VerdictRule> Rows = new()
    {
        [(AskUntil, ConditionTrue)] = VerdictRule.Pass,
        [(AskUntil, ConditionFalseAtLimit)] = VerdictRule.Fail,
        [(AskUntil, ConditionUnknownAtLimit)] = VerdictRule.AsMissing,
        [(Await, ConditionTrue)] = VerdictRule.Pass,
        [(Await, ConditionFalseAtLimit)] = VerdictRule.Fail,
        [(Await, ConditionUnknownAtLimit)] = VerdictRule.AsMissing,
        [(Ask, Confirmed)] = VerdictRule.None,
        [(Ask, NoAnswer)] = VerdictRule.Inconclusive,
        [(Judge, AnsweredOk)] = VerdictRule.Pass,
        [(Judge, AnsweredNotOk)] = VerdictRule.Fail,
        [(Judge, NoAnswer)] = VerdictRule.Inconclusive,
        [(Enter, ValueJudged)] = VerdictRule.ByExpectation,
        [(Enter, ValueTaken)] = VerdictRule.None,
        [(Enter, NoAnswer)] = VerdictRule.Inconclusive,
        [(Choose, ValueJudged)] = VerdictRule.ByExpectation,
        [(Choose, ValueTaken)] = VerdictRule.None,
        [(Choose, NoAnswer)] = VerdictRule.Inconclusive,
        [(Scan, ValueJudged)] = VerdictRule.ByExpectation,
        [(Scan, ValueTaken)] = VerdictRule.None,
        [(Scan, NoAnswer)] = VerdictRule.Inconclusive,
        [(Read, ValueJudged)] = VerdictRule.ByExpectation,
        [(Read, ValueTaken)] = VerdictRule.None,
        [(Read, Missing)] = VerdictRule.AsMissing,
        [(Sample, ValueJudged)] = VerdictRule.ByExpectation,
        [(Sample, ValueTaken)] = VerdictRule.None,
        [(Sample, Missing)] = VerdictRule.AsMissing,
        [(Compute, ValueJudged)] = VerdictRule.ByExpectation,
        [(Compute, ValueTaken)] = VerdictRule.None,
        [(Compute, Missing)] = VerdictRule.AsMissing,
        [(Set, Confirmed)] = VerdictRule.None,
        [(Set, ValueJudged)] = VerdictRule.ByExpectation,
        [(Set, ValueTaken)] = VerdictRule.None,
        [(Set, Missing)] = VerdictRule.AsMissing,
        [(Do, Confirmed)] = VerdictRule.None,
        [(Do, ValueJudged)] = VerdictRule.ByExpectation,
        [(Do, ValueTaken)] = VerdictRule.None,
        [(Do, Missing)] = VerdictRule.AsMissing,
        [(Wait, TimeOver)] = VerdictRule.None,
    };

    public static TheoryData<ActionKind, Ending> AllPairs =>
        new(from action in Enum.GetValues<ActionKind>() from ending in Enum.GetValues<Ending>() select (action, ending));

    [Theory, MemberData(nameof(AllPairs))]
    public void Every_pair_has_its_rule(ActionKind action, Ending ending)
    {
        var expected = OfEveryKind.TryGetValue(ending, out var common) ? common : Rows.GetValueOrDefault((action, ending), VerdictRule.CannotHappen);
        Assert.Equal(expected, VerdictTable.Rule(action, ending));
    }

    [Theory, MemberData(nameof(AllPairs))]
    public void Only_the_rules_that_say_so_hand_the_verdict_on(ActionKind action, Ending ending)
    {
        foreach (var criteria in Enum.GetValues<Verdict>())
        {
            foreach (var missing in new[] { Verdict.Fail, Verdict.Error })
            {
                Verdict? expected = VerdictTable.Rule(action, ending) switch
                {
                    VerdictRule.None => Verdict.None,
                    VerdictRule.Pass => Verdict.Pass,
                    VerdictRule.Inconclusive => Verdict.Inconclusive,
                    VerdictRule.Fail => Verdict.Fail,
                    VerdictRule.Error => Verdict.Error,
                    VerdictRule.ByExpectation => criteria,
                    VerdictRule.AsMissing => missing,
                    _ => null,
                };
                if (expected is { } verdict) Assert.Equal(verdict, VerdictTable.Measured(action, ending, criteria, missing));
                else Assert.Throws<InvalidOperationException>(() => VerdictTable.Measured(action, ending, criteria, missing));
            }
        }
    }
}
