using EolSequencer.Model.Values;
using static EolSequencer.Model.Tests.Support.Lookups;

namespace EolSequencer.Model.Tests.Units;

/// <summary>A reading in one unit meets a window in another; the last digit decides, so nothing may be rounded that need not be.</summary>
/// <remarks>Figures: SI Brochure 9th edition; NIST SP 811 (2008) appendix B for the definitions of inch, foot, mile, pound.</remarks>
public class UnitConversionTests
{
    [Theory, Trait("case", "UNT-05")]
    [InlineData("100", "kPa", "1", "bar")]
    [InlineData("293.15", "K", "20", "°C")]
    [InlineData("25.4", "mm", "1", "in")]
    [InlineData("212", "°F", "100", "°C")]
    [InlineData("-40", "°C", "-40", "°F")]
    [InlineData("0", "K", "-273.15", "°C")]
    [InlineData("100", "m/s", "360", "km/h")]
    [InlineData("1", "mph", "0.44704", "m/s")]
    [InlineData("1.5", "Hz", "90", "1/min")]
    [InlineData("1", "rpm", "6", "deg/s")]
    [InlineData("0.5", "deg", "30", "′")]
    [InlineData("0.1", "%", "1", "m/km")]
    [InlineData("1", "%", "10000", "ppm")]
    [InlineData("1", "kgf", "9.80665", "N")]
    [InlineData("1", "lbf·ft", "1.3558179483314004", "N·m")]
    [InlineData("12", "in", "1", "ft")]
    [InlineData("36", "mL/min", "2.16", "L/h")]
    [InlineData("1", "Pa·m³/s", "10", "mbar·L/s")]
    [InlineData("1.5", "min", "90", "s")]
    [InlineData("2500", "µm", "2.5", "mm")]
    public void Conversion_is_exact_both_ways(string one, string from, string other, string to)
    {
        Assert.True(NumberText.TryParse(one, out var a));
        Assert.True(NumberText.TryParse(other, out var b));
        Assert.Equal(b, Convert(a, from, to));
        Assert.Equal(a, Convert(b, to, from));
    }

    [Theory]
    [InlineData("1", "psi", "6.894757293168361", "kPa")]
    [InlineData("180", "deg", "3.141592653589793", "rad")]
    [InlineData("1", "rad", "1000", "mrad")]
    public void A_conversion_without_end_is_right_to_sixteen_digits(string one, string from, string other, string to)
    {
        Assert.True(NumberText.TryParse(one, out var a));
        Assert.True(NumberText.TryParse(other, out var b));
        Assert.InRange(Convert(a, from, to) / b - 1, -1e-15m, 1e-15m);
    }

    [Fact]
    public void A_width_of_temperature_has_no_zero_point()
    {
        Assert.Equal(0.9m, Known("K").ConvertWidth(0.5m, Known("°F")));
        Assert.Equal(0.5m, Known("K").ConvertWidth(0.5m, Known("°C")));
    }

    [Fact]
    public void Another_dimension_is_a_broken_assumption() =>
        Assert.Throws<ArgumentException>(() => Known("V").TryConvert(1, Known("A"), out _));

    [Fact]
    public void A_result_beyond_a_decimal_is_reported() =>
        Assert.False(Known("Mbar").TryConvert(1e20m, Known("Pa"), out _));

    [Fact]
    public void A_count_stays_a_count()
    {
        Assert.True(new NumberValue(3, null).TryIn(null, out var number));
        Assert.Equal(3, number);
        Assert.Throws<ArgumentException>(() => new NumberValue(3, null).TryIn(Known("V"), out _));
        Assert.Throws<ArgumentException>(() => new NumberValue(3, Known("V")).TryIn(null, out _));
    }
}
