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
}
