using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Tests.Diagnostics;

/// <summary>A message quotes the author, and a message is one line that can be read on any screen.</summary>
public sealed class ShownTests
{
    [Theory]
    [InlineData("Press the pedal", "'Press the pedal'")]
    [InlineData("two\nlines", "'two⏎lines'")]
    [InlineData("a\u0007b", "'aU+0007b'")]
    [InlineData("ä 😀", "'ä 😀'")]
    public void Nothing_invisible_is_shown(string text, string shown) => Assert.Equal(shown, Shown.Quoted(text));

    [Fact]
    public void Half_a_character_is_shown_as_the_replacement_mark() => Assert.Equal("'\uFFFD half'", Shown.Quoted("\uD83D half"));

    [Fact]
    public void A_long_text_is_cut() => Assert.Equal($"'{new string('x', 60)}…'", Shown.Quoted(new string('x', 500)));

    [Fact]
    public void Words_are_listed_with_or_before_the_last()
    {
        Assert.Equal("'a'", Shown.OneOf(["a"]));
        Assert.Equal("'a' or 'b'", Shown.OneOf(["a", "b"]));
        Assert.Equal("'a', 'b' or 'c'", Shown.OneOf(["a", "b", "c"]));
    }
}
