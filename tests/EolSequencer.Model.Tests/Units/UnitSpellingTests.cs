using EolSequencer.Model.Tests.Support;
using EolSequencer.Model.Units;
using static EolSequencer.Model.Tests.Support.Lookups;

namespace EolSequencer.Model.Tests.Units;

/// <summary>A spelling decides between a thousandth and a million: what is agreed is found, everything else is refused with advice.</summary>
public class UnitSpellingTests
{
    [Theory, Trait("case", "UNT-03")]
    [InlineData("Nm", "N·m")]
    [InlineData("N.m", "N·m")]
    [InlineData("N·m", "N·m")]
    [InlineData("N\u22C5m", "N·m")]
    [InlineData("°C", "°C")]
    [InlineData("degC", "°C")]
    [InlineData("Ohm", "ohm")]
    [InlineData("\u03A9", "ohm")]
    [InlineData("\u2126", "ohm")]
    [InlineData("k\u2126", "kohm")]
    [InlineData("\u00B5m", "µm")]
    [InlineData("\u03BCm", "µm")]
    [InlineData("um", "µm")]
    [InlineData("per min", "1/min")]
    [InlineData("°", "deg")]
    [InlineData("'", "′")]
    [InlineData("cm³", "mL")]
    [InlineData("l", "L")]
    public void Agreed_spellings_are_one_unit(string spelling, string symbol) => Assert.Equal(symbol, Known(spelling).Symbol);

    [Theory]
    [InlineData("dB(A)", Dimension.SoundLevel)]
    [InlineData("dB", Dimension.Level)]
    [InlineData("% vol", Dimension.VolumeShare)]
    [InlineData("%", Dimension.Ratio)]
    [InlineData("1/min", Dimension.Frequency)]
    [InlineData("rpm", Dimension.RotationalSpeed)]
    [InlineData("ohm/V", Dimension.ResistancePerVoltage)]
    [InlineData("K", Dimension.Temperature)]
    [InlineData("K diff", Dimension.TemperatureDifference)]
    public void Entries_that_look_related_have_dimensions_of_their_own(string symbol, Dimension dimension) =>
        Assert.Equal(dimension, Known(symbol).Dimension);

    [Theory, Trait("case", "UNT-01")]
    [InlineData("MBAR", "mbar", "Mbar")]
    [InlineData("MM", "mm", "Mm")]
    [InlineData("ma", "mA", "MA")]
    [InlineData("mpa", "MPa", "mPa")]
    [InlineData("MOHM", "mohm", "Mohm")]
    public void A_change_of_case_between_milli_and_mega_names_both(string spelling, string first, string second)
    {
        var answer = Unknown(spelling);
        Assert.Equal([first, second], answer.Candidates);
        Assert.Contains("milli", answer.Hint);
        Assert.Contains("mega", answer.Hint);
    }

    [Theory, Trait("case", "UNT-01")]
    [InlineData("Mbar")]
    [InlineData("mm")]
    [InlineData("mA")]
    public void The_right_case_is_accepted(string spelling) => Assert.Equal(spelling, Known(spelling).Symbol);

    [Fact, Trait("case", "UNT-01")]
    public void A_candidate_outside_the_table_is_said_to_be_outside() =>
        Assert.Equal("case counts: mm (milli) or Mm (mega), which the unit table does not hold?", Unknown("MM").Hint);

    [Theory]
    [InlineData("v", "V")]
    [InlineData("KPA", "kPa")]
    [InlineData("RPM", "rpm")]
    [InlineData("HZ", "Hz")]
    [InlineData("Min", "min")]
    public void Another_case_without_a_prefix_names_one(string spelling, string symbol) => Assert.Equal([symbol], Unknown(spelling).Candidates);

    [Theory, Trait("case", "UNT-03")]
    [InlineData("C", "°C", "coulomb")]
    [InlineData("F", "°F", "farad")]
    [InlineData("kmh", "km/h", "km/h")]
    [InlineData("U/min", "rpm", "1/min")]
    public void Everyday_spellings_that_are_refused_come_with_advice(string spelling, string candidate, string inHint)
    {
        var answer = Unknown(spelling);
        Assert.Equal([candidate], answer.Candidates);
        Assert.Contains(inHint, answer.Hint);
    }

    [Theory]
    [InlineData("\u00BAC", "°C", "U+00BA")]
    [InlineData("N*m", "N·m", "asterisk")]
    [InlineData("km\u2215h", "km/h", "U+2215")]
    [InlineData("%\u00A0vol", "% vol", "U+00A0")]
    public void Look_alike_characters_are_named(string spelling, string symbol, string named)
    {
        var answer = Unknown(spelling);
        Assert.Equal([symbol], answer.Candidates);
        Assert.Contains(named, answer.Hint);
    }

    [Theory]
    [InlineData("bat", "bar")]
    [InlineData("kPaa", "kPa")]
    [InlineData("celsius", null)]
    [InlineData("furlong", null)]
    [InlineData("", null)]
    public void A_slip_of_one_key_is_guessed_and_anything_further_is_not(string spelling, string? guess)
    {
        var answer = Unknown(spelling);
        Assert.NotEmpty(answer.Hint);
        if (guess is null) Assert.Empty(answer.Candidates);
        else Assert.Equal(guess, answer.Candidates[0]);
    }

    [Fact, Trait("case", "UNT-06")]
    public void Points_and_pints_are_refused_and_psi_is_one_unit()
    {
        Assert.Empty(Unknown("pt").Candidates);
        Assert.Contains("pint", Unknown("pt").Hint);
        Assert.Equal(Dimension.Pressure, Known("psi").Dimension);
    }

    [Theory, MemberData(nameof(CultureScope.Names), MemberType = typeof(CultureScope))]
    public void Lookups_do_not_depend_on_the_culture(string culture)
    {
        using var _ = new CultureScope(culture);
        Assert.Equal("min", Known("min").Symbol);
        Assert.Equal(["min"], Unknown("MIN").Candidates);
        Assert.Equal("illuminance", Dimension.Illuminance.Word());
    }
}
