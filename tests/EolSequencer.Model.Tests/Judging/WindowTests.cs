using CsCheck;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Tests.Support;
using EolSequencer.Model.Units;

namespace EolSequencer.Model.Tests.Judging;

/// <summary>A window is the sentence an engineer wrote; its ends belong to it and its text must say the same as its arithmetic.</summary>
public class WindowTests
{
    private static readonly Unit Volt = UnitTable.Required("V");

    [Theory]
    [InlineData("1.6", "2.4", "1.6", true)]
    [InlineData("1.6", "2.4", "2.4", true)]
    [InlineData("1.6", "2.4", "1.5999999999", false)]
    [InlineData("1.6", "2.4", "2.4000000001", false)]
    [InlineData("1.6", null, "1000000", true)]
    [InlineData("1.6", null, "1.59", false)]
    [InlineData(null, "2.4", "-1000000", true)]
    [InlineData(null, "2.4", "2.41", false)]
    [InlineData("5", "5", "5.00", true)]
    public void Both_ends_belong_to_the_window(string? low, string? high, string number, bool inside)
    {
        var window = new Window(Number(low), Number(high), Volt);
        Assert.Equal(inside, window.Contains(Number(number)!.Value));
        Assert.Equal(inside ? Verdict.Pass : Verdict.Fail, window.Judge(Number(number)!.Value));
    }

    [Fact]
    public void An_inverted_window_and_one_without_ends_do_not_exist()
    {
        Assert.Throws<ArgumentException>(() => new Window(2.4m, 2.0m, Volt));
        Assert.Throws<ArgumentException>(() => new Window(null, null, Volt));
    }

    [Theory, MemberData(nameof(CultureScope.Names), MemberType = typeof(CultureScope))]
    public void A_window_reads_the_same_in_every_culture(string culture)
    {
        using var _ = new CultureScope(culture);
        Assert.Equal("1.60 .. 2.40 V", new Window(1.60m, 2.40m, Volt).Describe());
        Assert.Equal("at least -9.6 V", new Window(-9.6m, null, Volt).Describe());
        Assert.Equal("at most 3", new Window(null, 3, null).Describe());
    }

    [Fact, Trait("case", "NUM-07")]
    public void Three_tenths_are_not_more_than_point_three() =>
        Assert.True(new Window(null, 0.3m, null).Contains(0.1m + 0.1m + 0.1m));

    [Fact]
    public void A_number_is_inside_exactly_when_it_is_on_the_right_side_of_both_ends() =>
        Gen.Select(Gen.Int[-1000, 1000], Gen.Int[-1000, 1000], Gen.Int[-1100, 1100]).Sample((a, b, x) =>
            new Window(Math.Min(a, b), Math.Max(a, b), null).Contains(x)
            == (new Window(Math.Min(a, b), null, null).Contains(x) && new Window(null, Math.Max(a, b), null).Contains(x)));

    private static decimal? Number(string? text) =>
        text is null ? null : decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
