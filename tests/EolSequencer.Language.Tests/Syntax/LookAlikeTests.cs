using EolSequencer.Language.Syntax;

namespace EolSequencer.Language.Tests.Syntax;

/// <summary>A window copied out of a text program looks right on every screen and means nothing.</summary>
public sealed class LookAlikeTests
{
    [Theory]
    [InlineData("1.6 … 2.4 A", 4, "..")]
    [InlineData("1.6 – 2.4 A", 4, "..")]
    [InlineData("at most 12 ºC", 11, "°")]
    [InlineData("2\u00A0.. 4 A", 1, " ")]
    [InlineData("≥ 5 A", 0, "at least")]
    public void The_first_look_alike_is_found_with_what_was_meant(string text, int index, string meant)
    {
        var found = LookAlike.FirstIn(text)!;
        Assert.Equal((index, text[index], meant), (found.Index, found.Found, found.Meant));
    }

    [Theory]
    [InlineData("1.6 .. 2.4 A")]
    [InlineData("140 ± 10 N·m")]
    [InlineData("at most 12 °C")]
    [InlineData("\u22125 .. 5 µm")]
    public void What_counts_as_written_is_no_look_alike(string text) => Assert.Null(LookAlike.FirstIn(text));
}
