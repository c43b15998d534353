using CsCheck;
using EolSequencer.Model.Tests.Support;
using EolSequencer.Model.Values;

namespace EolSequencer.Model.Tests.Values;

/// <summary>Binary tails must not decide a verdict: what comes through floating point is a decimal at the resolution it had.</summary>
public class FloatingNumberTests
{
    [Theory, Trait("case", "NUM-07")]
    [InlineData(4.35 * 100, "435")]
    [InlineData(0.1 + 0.2, "0.3")]
    [InlineData(-1.0 / 3, "-0.333333333333")]
    [InlineData(123456789012345.0, "123456789012000")]
    [InlineData(1e-300, "0")]
    [InlineData(7.5e-28, "0.0000000000000000000000000008")]
    [InlineData(0.0, "0")]
    public void A_double_keeps_twelve_digits(double number, string canonical)
    {
        Assert.True(FloatingNumber.TryFromDouble(number, out var result));
        Assert.Equal(canonical, NumberText.Of(result));
    }

    [Theory, Trait("case", "NUM-06")]
    [InlineData(0x413B3333u, "11.7")]
    [InlineData(0x43668000u, "230.5")]
    [InlineData(0x3DCCCCCDu, "0.1")]
    [InlineData(0xC2C80000u, "-100")]
    public void A_32_bit_float_is_the_decimal_it_stands_for(uint bits, string canonical)
    {
        Assert.True(FloatingNumber.TryFromSingle(BitConverter.UInt32BitsToSingle(bits), out var result));
        Assert.Equal(canonical, NumberText.Of(result));
    }

    [Theory, Trait("case", "NUM-04"), Trait("case", "NUM-08")]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    [InlineData(1e29)]
    [InlineData(double.MaxValue)]
    public void What_is_not_finite_or_too_large_is_no_number(double number)
    {
        Assert.False(FloatingNumber.TryFromDouble(number, out _));
        Assert.False(FloatingNumber.TryFromSingle((float)number, out _));
    }

    [Fact]
    public void A_decimal_of_twelve_digits_survives_the_way_through_a_double() =>
        Gen.Select(Gen.Long[-999_999_999_999, 999_999_999_999], Gen.Int[0, 12]).Sample((digits, places) =>
        {
            var number = digits / (decimal)Math.Pow(10, places);
            return FloatingNumber.TryFromDouble((double)number, out var result) && result == number;
        });

    [Theory, MemberData(nameof(CultureScope.Names), MemberType = typeof(CultureScope))]
    public void The_culture_does_not_matter(string culture)
    {
        using var _ = new CultureScope(culture);
        Assert.True(FloatingNumber.TryFromDouble(-1234.5, out var result));
        Assert.Equal(-1234.5m, result);
    }
}
