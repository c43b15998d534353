using CsCheck;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Model.Tests.Vehicles;

/// <summary>The check digit against published worked values.</summary>
/// <remarks>
/// 49 CFR 565.15(c) prints the worked example 1G4AH59H45G118341. The other numbers are published check values of test
/// suites and of a guide to the regulation; no vehicle is meant. Sums were recomputed by hand.
/// </remarks>
public class VinCheckDigitTests
{
    [Theory]
    [InlineData("1G4AH59H45G118341", '4')]
    [InlineData("1M8GDM9AXKP042788", 'X')]
    [InlineData("JH2RC3605MM101581", '5')]
    [InlineData("1J9RP1A36A1644345", '6')]
    [InlineData("1FACP45EXLF192944", 'X')]
    [InlineData("LJCPCBLCX11000237", 'X')]
    [InlineData("11111111111111111", '1')]
    [InlineData("00000000000000000", '0')]
    [InlineData("99999999999999999", '9')]
    [InlineData("1ZZAB12C8DE345678", '8')]
    public void A_published_number_carries_its_check_digit(string text, char digit)
    {
        Assert.Equal(digit, text[8]);
        Assert.Equal(digit, Vin.ComputeCheckDigit(text));
    }

    [Theory]
    [InlineData("1G4AH59H55G118341", '4')]
    [InlineData("1G4AH59H45G118331", '1')]
    [InlineData("12345678901234567", '7')]
    public void A_published_wrong_number_is_found(string text, char expected)
    {
        Assert.Equal(expected, Vin.ComputeCheckDigit(text));
        Assert.NotNull(Vin.TryParse(text, CheckDigitRule.Require).Fault);
    }

    [Theory]
    [InlineData("1D8GDM9AXKP042788")]
    [InlineData("1U8GDM9AXKP042788")]
    [InlineData("1M8GDM8AXKP042789")]
    public void Letters_of_equal_value_and_positions_of_equal_weight_are_beyond_the_check_digit(string text) =>
        Assert.Equal('X', Vin.ComputeCheckDigit(text));

    [Fact]
    public void A_change_of_one_digit_is_always_found() =>
        Gen.Select(Gen.Int[0, 999_999_999], Gen.Int[0, 16], Gen.Int[0, 9]).Where((_, at, _) => at != 8).Sample((serial, at, digit) =>
        {
            var text = $"TESTVXN0-{serial % 100_000_000:D8}";
            var other = text.Remove(at, 1).Insert(at, digit.ToString(System.Globalization.CultureInfo.InvariantCulture));
            text = text.Replace('-', '0');
            other = other.Replace('-', '0');
            // Letters share values with digits, so only a change from digit to digit is promised.
            return text == other || !char.IsAsciiDigit(text[at]) || Vin.ComputeCheckDigit(text) != Vin.ComputeCheckDigit(other);
        });
}
