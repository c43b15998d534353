using CsCheck;
using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Tests.Diagnostics;

/// <summary>"Did you mean …" helps only when it is right; a far-fetched guess is worse than none.</summary>
public sealed class NearestTests
{
    private static readonly string[] Keys = ["step", "steps", "within", "expect", "max", "min", "on-fail", "only-if"];

    [Theory]
    [InlineData("maxx", "max")]
    [InlineData("Max", "max")]
    [InlineData("withn", "within")]
    [InlineData("wihtin", "within")]
    [InlineData("on_fail", "on-fail")]
    [InlineData("exepct", "expect")]
    [InlineData("stepss", "steps")]
    public void A_slip_finds_its_word(string word, string meant) => Assert.Equal(meant, Nearest.Of(word, Keys));

    [Theory]
    [InlineData("")]
    [InlineData("torque")]
    [InlineData("x")]
    public void A_word_far_from_all_finds_none(string word) => Assert.Null(Nearest.Of(word, Keys));

    [Fact]
    public void A_very_long_word_is_not_compared() => Assert.Null(Nearest.Of(new string('a', 100_000), [new string('a', 99_999)]));

    [Theory]
    [InlineData("", "abc", 3)]
    [InlineData("kitten", "sitting", 3)] // Wagner and Fischer's classic pair
    [InlineData("ab", "ba", 1)]
    [InlineData("ca", "abc", 3)] // 2 if a letter might be touched twice
    public void Distances_count_slips(string left, string right, int slips) => Assert.Equal(slips, Nearest.Distance(left, right));

    [Fact]
    public void Distance_is_the_same_in_both_directions_and_zero_for_equal_words() =>
        Gen.Select(Gen.String[Gen.Char['a', 'd'], 0, 8], Gen.String[Gen.Char['a', 'd'], 0, 8]).Sample((left, right) =>
            Nearest.Distance(left, right) == Nearest.Distance(right, left) && Nearest.Distance(left, right) == 0 == (left == right));
}
