using EolSequencer.Model.Tests.Support;
using EolSequencer.Model.Values;

namespace EolSequencer.Model.Tests.Values;

/// <summary>A number that is read ten times too large passes a vehicle that should fail; each known way to that is closed here.</summary>
public class NumberTextTests
{
    [Theory]
    [InlineData("0", "0")]
    [InlineData("0.05", "0.05")]
    [InlineData("1.60", "1.60")]
    [InlineData("12.345", "12.345")]
    [InlineData("+0.5", "0.5")]
    [InlineData("-5.5", "-5.5")]
    [InlineData("\u22125.5", "-5.5")]
    [InlineData("1234567890123456789012345678", "1234567890123456789012345678")]
    public void A_number_keeps_its_value_and_its_digits(string text, string canonical)
    {
        Assert.True(NumberText.TryParse(text, out var number));
        Assert.Equal(canonical, NumberText.Of(number));
    }

    [Theory]
    [InlineData("", "no number here")]
    [InlineData("-", "no number here")]
    [InlineData("1,5", "no comma")]
    [InlineData("1,234.5", "no comma")]
    [InlineData("1 234", "thousands")]
    [InlineData("1_234", "thousands")]
    [InlineData("1\u202F234", "thousands")]
    [InlineData("1’234", "thousands")]
    [InlineData("1.2.3", "one point")]
    [InlineData(".5", "zero in front")]
    [InlineData("5.", "behind the point")]
    [InlineData("0123", "leading zeros")]
    [InlineData("-007.5", "leading zeros")]
    [InlineData("1e3", "exponent")]
    [InlineData("1.5E+3", "exponent")]
    [InlineData("--1", "no number")]
    [InlineData("0x10", "no number")]
    [InlineData("NaN", "no number")]
    [InlineData("\u0661\u0662", "no number")]
    [InlineData("five", "no number")]
    [InlineData("12345678901234567890123456789", "28 digits")]
    [InlineData("0.1234567890123456789012345678", "28 digits")]
    public void Anything_else_is_refused_with_its_reason(string text, string reason)
    {
        Assert.False(NumberText.TryParse(text, out _, out var fault));
        Assert.Contains(reason, fault);
    }

    [Theory, Trait("case", "NUM-01"), MemberData(nameof(CultureScope.Names), MemberType = typeof(CultureScope))]
    public void A_point_is_a_point_in_every_culture(string culture)
    {
        using var _ = new CultureScope(culture);
        Assert.True(NumberText.TryParse("12.345", out var number));
        Assert.Equal(12.345m, number);
        Assert.Equal(new InstrumentReading.Number(0.7m), InstrumentNumber.Parse("0.7"));
    }

    [Theory, Trait("case", "NUM-02"), MemberData(nameof(CultureScope.Names), MemberType = typeof(CultureScope))]
    public void A_comma_is_refused_in_every_culture(string culture)
    {
        using var _ = new CultureScope(culture);
        Assert.False(NumberText.TryParse("1,5", out var _));
        Assert.False(NumberText.TryParse("63,40", out var _));
        Assert.IsType<InstrumentReading.Malformed>(InstrumentNumber.Parse("63,40"));
    }

    [Theory, Trait("case", "NUM-03"), MemberData(nameof(CultureScope.Names), MemberType = typeof(CultureScope))]
    public void A_minus_is_written_as_a_hyphen_and_read_back(string culture)
    {
        using var _ = new CultureScope(culture);
        Assert.Equal("-5.5", NumberText.Of(-5.5m));
        Assert.True(NumberText.TryParse("\u22125.5", out var typed));
        Assert.Equal(-5.5m, typed);
    }
}
