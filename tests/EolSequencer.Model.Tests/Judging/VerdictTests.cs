using CsCheck;
using EolSequencer.Model.Judging;

namespace EolSequencer.Model.Tests.Judging;

/// <summary>The order of verdicts decides every roll-up, so it is shown for every pair.</summary>
/// <remarks>Order: ETSI ES 201 873-1 (TTCN-3 core language), overwriting rules of the verdict type.</remarks>
public class VerdictTests
{
    private static readonly Gen<Verdict> AnyVerdict = Gen.Enum<Verdict>();

    public static TheoryData<Verdict, Verdict, Verdict> Pairs => new()
    {
        { Verdict.None, Verdict.None, Verdict.None },
        { Verdict.None, Verdict.Pass, Verdict.Pass },
        { Verdict.None, Verdict.Inconclusive, Verdict.Inconclusive },
        { Verdict.None, Verdict.Fail, Verdict.Fail },
        { Verdict.None, Verdict.Error, Verdict.Error },
        { Verdict.Pass, Verdict.Pass, Verdict.Pass },
        { Verdict.Pass, Verdict.Inconclusive, Verdict.Inconclusive },
        { Verdict.Pass, Verdict.Fail, Verdict.Fail },
        { Verdict.Pass, Verdict.Error, Verdict.Error },
        { Verdict.Inconclusive, Verdict.Inconclusive, Verdict.Inconclusive },
        { Verdict.Inconclusive, Verdict.Fail, Verdict.Fail },
        { Verdict.Inconclusive, Verdict.Error, Verdict.Error },
        { Verdict.Fail, Verdict.Fail, Verdict.Fail },
        { Verdict.Fail, Verdict.Error, Verdict.Error },
        { Verdict.Error, Verdict.Error, Verdict.Error },
    };

    [Theory, MemberData(nameof(Pairs))]
    public void The_worse_of_two_wins_in_either_order(Verdict first, Verdict second, Verdict worst)
    {
        Assert.Equal(worst, Verdicts.Worst(first, second));
        Assert.Equal(worst, Verdicts.Worst(second, first));
    }

    [Fact]
    public void The_pairs_above_are_all_there_are() => Assert.Equal(5 * 6 / 2, Pairs.Count);

    [Fact]
    public void Worst_does_not_depend_on_order_grouping_or_repetition() =>
        Gen.Select(AnyVerdict.List[0, 6], AnyVerdict.List[0, 6]).Sample((a, b) =>
            Verdicts.Worst([.. a, .. b]) == Verdicts.Worst([.. b, .. a])
            && Verdicts.Worst([.. a, .. b]) == Verdicts.Worst(Verdicts.Worst(a), Verdicts.Worst(b))
            && Verdicts.Worst([.. a, .. a]) == Verdicts.Worst(a));

    [Fact]
    public void The_worst_of_nothing_is_none() => Assert.Equal(Verdict.None, Verdicts.Worst([]));

    [Theory]
    [InlineData(Verdict.None, "none")]
    [InlineData(Verdict.Pass, "pass")]
    [InlineData(Verdict.Inconclusive, "inconclusive")]
    [InlineData(Verdict.Fail, "fail")]
    [InlineData(Verdict.Error, "error")]
    public void Each_verdict_has_its_word(Verdict verdict, string word)
    {
        Assert.Equal(word, verdict.Word());
        Assert.True(Verdicts.TryParse(word, out var back));
        Assert.Equal(verdict, back);
    }

    [Theory, Trait("case", "YML-11")]
    [InlineData("PASS")]
    [InlineData("1")]
    [InlineData("inconc")]
    [InlineData("")]
    public void Other_words_and_numbers_are_no_verdicts(string word) => Assert.False(Verdicts.TryParse(word, out _));
}
