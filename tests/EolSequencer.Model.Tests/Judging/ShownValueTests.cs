using System.Globalization;
using CsCheck;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Tests.Support;
using EolSequencer.Model.Units;

namespace EolSequencer.Model.Tests.Judging;

/// <summary>People trust what they see: a value shown as 5.0 must not have failed "at most 5.0".</summary>
public class ShownValueTests
{
    private static readonly Unit Volt = UnitTable.Required("V");

    [Theory, Trait("case", "NUM-05")]
    [InlineData("5.04", "5.04 V")]
    [InlineData("5.0004", "5.0004 V")]
    [InlineData("5.05", "5.1 V")]
    [InlineData("5.0", "5.0 V")]
    [InlineData("4.96", "4.96 V")]
    [InlineData("4.94", "4.9 V")]
    [InlineData("4", "4 V")]
    [InlineData("4.123456", "4.1 V")]
    public void Digits_are_added_until_the_value_lies_where_it_lies(string number, string shown)
    {
        var result = ShownValue.Of(Number(number), new Window(null, 5.0m, Volt));
        Assert.Equal(shown, result.Value);
        Assert.Equal("at most 5.0 V", result.Window);
    }

    [Fact]
    public void A_guarded_value_shows_on_which_side_of_the_guard_band_it_lies() =>
        Assert.Equal("1.648 V", ShownValue.Of(1.648m, new Window(1.6m, 2.4m, Volt), 0.05m).Value);

    [Theory, Trait("case", "NUM-05"), MemberData(nameof(CultureScope.Names), MemberType = typeof(CultureScope))]
    public void The_culture_does_not_matter(string culture)
    {
        using var _ = new CultureScope(culture);
        Assert.Equal("-5.04 V", ShownValue.Of(-5.04m, new Window(-5.0m, null, Volt)).Value);
    }

    [Fact]
    public void Judging_what_is_shown_gives_the_verdict_of_what_was_measured() =>
        Gen.Select(Gen.Int[-60, 60], Gen.Int[0, 50], Gen.Int[0, 20], Gen.Long[-99_999_999, 99_999_999]).Sample((low, width, uncertainty, digits) =>
        {
            var (window, guard, number) = (new Window(low / 10m, (low + width) / 10m, null), uncertainty / 100m, digits / 10_000_000m);
            var shown = Number(ShownValue.Of(number, window, guard).Value);
            return window.Judge(shown) == window.Judge(number)
                && GuardedDecision.Judge(shown, window, guard) == GuardedDecision.Judge(number, window, guard);
        });

    private static decimal Number(string text) => decimal.Parse(text, CultureInfo.InvariantCulture);
}
