using EolSequencer.Model.Tests.Support;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Model.Tests.Vehicles;

/// <summary>The wrong vehicle number puts the wrong order on a vehicle; nothing is guessed, and the market decides about the check digit.</summary>
public class VinTests
{
    [Theory, Trait("case", "VIN-01")]
    [InlineData("TESTVXN00AA000017", "6 expected, found 0")]
    [InlineData("TESTVXNZZAA000017", "expected, found Z")]
    public void A_check_digit_is_a_matter_of_the_market(string text, string doubt)
    {
        Assert.Equal(text, Accepted(text, CheckDigitRule.Off).Text);
        Assert.Empty(Vin.TryParse(text, CheckDigitRule.Off).Warnings);

        Assert.Equal(text, Accepted(text, CheckDigitRule.Warn).Text);
        Assert.Contains(doubt, Assert.Single(Vin.TryParse(text, CheckDigitRule.Warn).Warnings));

        Assert.Contains(doubt, Refused(text, CheckDigitRule.Require));
    }

    [Theory, Trait("case", "VIN-02")]
    [InlineData("TESTVXN0XAA000005")]
    [InlineData("TESTVXN06AA000017")]
    public void A_right_check_digit_is_accepted_and_ten_is_X(string text)
    {
        Assert.Equal(text, Accepted(text, CheckDigitRule.Require).Text);
        Assert.Equal(text[8], Vin.ComputeCheckDigit(text));
    }

    [Fact, Trait("case", "VIN-02")]
    public void Two_digits_swapped_are_found() =>
        Assert.Equal("position 9: check digit 1 expected, found 6", Refused("TESTVXN06AA000071", CheckDigitRule.Require));

    [Theory, Trait("case", "VIN-03")]
    [InlineData("TESTVXNO6AA000017", "position 8: O (U+004F) not allowed")]
    [InlineData("TESTVXN06AA0000l7", "position 16: l (U+006C) not allowed")]
    [InlineData("TESTVXN06\u0410A000017", "position 10: \u0410 (U+0410) not allowed")]
    [InlineData("IESTVXN06AA000017", "position 1: I (U+0049) not allowed")]
    [InlineData("QESTVXN06AA000017", "position 1: Q (U+0051) not allowed")]
    [InlineData("TESTVXN06AA00001 ", "position 17: U+0020 not allowed")]
    [InlineData("TESTVXN0\06AA00017", "position 9: U+0000 not allowed")]
    [InlineData("testvxn06aa000017", "position 1: t (U+0074) not allowed")]
    [InlineData("\u0661ESTVXN06AA000017", "position 1: \u0661 (U+0661) not allowed")]
    public void Forbidden_letters_and_look_alikes_are_refused_with_position_and_code_point(string text, string fault)
    {
        Assert.Equal(fault, Refused(text, CheckDigitRule.Off));
        Assert.Equal(fault, Refused(text, CheckDigitRule.Require));
    }

    [Fact, Trait("case", "VIN-03")]
    public void Half_a_character_is_refused_too() =>
        Assert.Equal("position 1: half a character (U+D800) not allowed", Refused("\uD800ESTVXN06AA000017", CheckDigitRule.Off));

    [Theory, Trait("case", "VIN-04")]
    [InlineData("11111111111111111")]
    [InlineData("00000000000000000")]
    [InlineData("99999999999999999")]
    public void Equal_characters_satisfy_the_arithmetic_and_are_refused(string text)
    {
        Assert.Equal(text[8], Vin.ComputeCheckDigit(text));
        Assert.Equal($"all characters are {text[0]}", Refused(text, CheckDigitRule.Require));
        Assert.Equal($"all characters are {text[0]}", Assert.Single(Vin.TryParse(text, CheckDigitRule.Warn).Warnings));
    }

    [Theory]
    [InlineData("", "a vehicle identification number has 17 characters, this has 0")]
    [InlineData("TESTVXN06AA00001", "a vehicle identification number has 17 characters, this has 16")]
    [InlineData("ITESTVXN06AA000017", "a vehicle identification number has 17 characters, this has 18")]
    public void The_length_is_seventeen(string text, string fault) => Assert.Equal(fault, Refused(text, CheckDigitRule.Off));

    [Theory]
    [InlineData("ITESTVXN06AA000017", "TESTVXN06AA000017")]
    [InlineData("TESTVXN06AA000017", "TESTVXN06AA000017")]
    [InlineData("OITESTVXN06AA000017", "OITESTVXN06AA000017")]
    [InlineData("2ITESTVXN06AA000017", "2ITESTVXN06AA000017")]
    [InlineData("IESTVXN06AA000017", "IESTVXN06AA000017")]
    [InlineData("iTESTVXN06AA000017", "iTESTVXN06AA000017")]
    [InlineData("I", "I")]
    public void Only_the_data_identifier_in_front_of_a_whole_number_is_dropped(string scanned, string text) =>
        Assert.Equal(text, VinLabel.Strip(scanned));

    [Theory, MemberData(nameof(CultureScope.Names), MemberType = typeof(CultureScope))]
    public void The_culture_does_not_matter(string culture)
    {
        using var _ = new CultureScope(culture);
        Assert.Equal("TESTVXN06AA000017", Accepted("TESTVXN06AA000017", CheckDigitRule.Require).ToString());
        Assert.Equal("position 1: i (U+0069) not allowed", Refused("iESTVXN06AA000017", CheckDigitRule.Require));
    }

    private static Vin Accepted(string text, CheckDigitRule rule)
    {
        var result = Vin.TryParse(text, rule);
        Assert.Null(result.Fault);
        return Assert.IsType<Vin>(result.Vin);
    }

    private static string Refused(string text, CheckDigitRule rule)
    {
        var result = Vin.TryParse(text, rule);
        Assert.Null(result.Vin);
        return Assert.IsType<string>(result.Fault);
    }
}
