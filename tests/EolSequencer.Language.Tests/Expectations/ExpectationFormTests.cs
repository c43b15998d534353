using EolSequencer.Language.Expectations;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;
using static EolSequencer.Language.Tests.Expectations.Judging;

namespace EolSequencer.Language.Tests.Expectations;

/// <summary>Every form an author may write, and the one meaning it has.</summary>
public class ExpectationFormTests
{
    [Theory]
    [InlineData("1.60 .. 2.40 A", "1.60 A", "2.40 A", "A")]
    [InlineData("1.60..2.40A", "1.60 A", "2.40 A", "A")]
    [InlineData("1.60 A .. 2.40 A", "1.60 A", "2.40 A", "A")]
    [InlineData("300 .. 900 mA", "300 mA", "900 mA", "mA")]
    [InlineData(".. 2.0 A", null, "2.0 A", "A")]
    [InlineData("2.0 A ..", "2.0 A", null, "A")]
    [InlineData("2.0 .. A", "2.0 A", null, "A")]
    [InlineData("-3 .. 3 A", "-3 A", "3 A", "A")]
    [InlineData("\u22123 .. +3 A", "-3 A", "3 A", "A")]
    [InlineData("2 .. 2 A", "2 A", "2 A", "A")]
    [InlineData("140 ± 10 A", "130 A", "150 A", "A")]
    [InlineData("140 +/- 10 A", "130 A", "150 A", "A")]
    [InlineData("140 A ± 10 A", "130 A", "150 A", "A")]
    [InlineData("1.50 ± 0.5 A", "1.00 A", "2.00 A", "A")]
    [InlineData("at least 9.6 A", "9.6 A", null, "A")]
    [InlineData("at most 5 mA", null, "5 mA", "mA")]
    [InlineData("(low) .. (high)", "(low)", "(high)", "A")]
    [InlineData("3 mA .. (travel)", "3 mA", "(travel)", "mA")]
    [InlineData("(travel) .. 3 A", "(travel)", "3 A", "A")]
    [InlineData("(a[\"x)..y\"] + (b)) .. 3 A", "(a[\"x)..y\"] + (b))", "3 A", "A")]
    [InlineData("at least (lowest)", "(lowest)", null, "A")]
    public void A_window_has_its_ends_and_its_unit(string expect, string? low, string? high, string unit)
    {
        var within = Assert.IsType<Expectation.Within>(Well(expect, Number("A")));
        Assert.Equal((low, high, unit), (within.Low?.ToString(), within.High?.ToString(), within.Unit?.Symbol));
    }

    [Theory]
    [InlineData("60 .. 120 1/min", "1/min")]
    [InlineData("90 ± 30 1/min", "1/min")]
    [InlineData("60 .. 1/min", "1/min")]
    [InlineData("93 .. 112 dB(A)", "dB(A)")]
    [InlineData("93 .. dB(A)", "dB(A)")]
    [InlineData("at most 0.5 % vol", "% vol")]
    [InlineData("at most 15%", "%")]
    [InlineData("-40 .. 30'", "′")]
    [InlineData("at most 20 °C", "°C")]
    [InlineData("4.7 Nm ..", "N·m")]
    [InlineData("at least 500 ohm/V", "ohm/V")]
    public void A_unit_with_digits_signs_or_blanks_is_read_as_one(string expect, string unit) =>
        Assert.Equal(unit, Assert.IsType<Expectation.Within>(Well(expect, Number(unit))).Unit?.Symbol);

    [Fact]
    public void A_count_has_no_unit()
    {
        var within = Assert.IsType<Expectation.Within>(Well("12 .. 13", Count));
        Assert.Equal(("12", "13", null), (within.Low?.ToString(), within.High?.ToString(), within.Unit));
    }

    [Fact]
    public void A_time_is_a_window_too()
    {
        var within = Assert.IsType<Expectation.Within>(Well("3 s .. (travel)", Time));
        Assert.Equal(("3 s", "(travel)"), (within.Low?.ToString(), within.High?.ToString()));
        Assert.Equal("min", Assert.IsType<Expectation.Within>(Well(".. 2 min", Time)).Unit?.Symbol);
    }

    [Fact]
    public void Equals_takes_the_kind_of_what_it_judges()
    {
        Assert.Equal(new NumberValue(2, null), Constant(Well("equals 2", Count)));
        Assert.Equal("100 kPa", Constant(Well("equals 100 kPa", Number("bar"))).ToString());
        Assert.Equal(new TextValue("FV7-GWB-0412"), Constant(Well("equals FV7-GWB-0412", Text)));
        Assert.Equal(new TextValue("0123"), Constant(Well("equals 0123", Text)));
        Assert.Equal(new TextValue("(a), b"), Constant(Well("'equals \"(a), b\"'", Text)));
        Assert.Equal(new TextValue(""), Constant(Well("'equals \"\"'", Text)));
        Assert.Equal(new TextValue("steel"), Constant(Well("equals steel", Choice)));
        Assert.Equal("(vehicle.vin)", Assert.IsType<Expectation.EqualTo>(Well("equals (vehicle.vin)", Text)).Wanted.ToString());
        Assert.Equal("(vehicle.tow)", Assert.IsType<Expectation.EqualTo>(Well("equals (vehicle.tow)", Truth)).Wanted.ToString());
    }

    [Fact]
    public void Lists_hold_numbers_texts_and_csharp()
    {
        Assert.Equal(["0", "15"], Items("one of [0, 15]", Count));
        Assert.Equal(["3 A", "5 A"], Items("one of [3 A, 5 A]", Number("A")));
        Assert.Equal(["steel", "alloy"], Items("one of [steel,alloy]", Choice));
        Assert.Equal(["a, b", "it's", "(order.x[\"a, b\"])"], Items("'one of [\"a, b\", it''s, (order.x[\"a, b\"])]'", Text));
        Assert.Equal(["camera:B1601", "P0420"], Assert.IsType<Expectation.Only>(Well("only [camera:B1601, P0420]", List)).Allowed);
    }

    [Fact]
    public void The_short_forms_stand_alone()
    {
        Assert.IsType<Expectation.Empty>(Well("empty", List));
        Assert.IsType<Expectation.Empty>(Well("empty", Text));
        Assert.True(Assert.IsType<Expectation.Truth>(Well("yes", Truth)).Wanted);
        Assert.False(Assert.IsType<Expectation.Truth>(Well("no", Truth)).Wanted);
    }

    [Theory]
    [InlineData("ABC", true)]
    [InlineData("ABCD", false)]
    [InlineData("xABC", false)]
    [InlineData("ABC\n", false)]
    [InlineData("abc", false)]
    public void A_pattern_matches_the_whole_text(string text, bool matches) =>
        Assert.Equal(matches, Assert.IsType<Expectation.Matches>(Well("matches /[A-Z]{3}|X/", Text)).Regex.IsMatch(text));

    [Fact]
    public void A_pattern_keeps_its_slashes()
    {
        var matches = Assert.IsType<Expectation.Matches>(Well("matches /a/b/", Text));
        Assert.Equal("a/b", matches.Pattern);
        Assert.Matches(matches.Regex, "a/b");
    }

    [Fact]
    public void A_pattern_that_would_try_for_ever_is_matched_at_once()
    {
        var matches = Assert.IsType<Expectation.Matches>(Well("matches /(a+)+b/", Text));
        Assert.DoesNotMatch(matches.Regex, new string('a', 100_000));
    }

    [Theory]
    [InlineData("limits.idle_speed", "idle_speed")]
    [InlineData("'limits.lamp_current[lamp]'", "lamp_current[lamp]")]
    [InlineData("'limits.lamp_current[ \"low\" ]'", "lamp_current[\"low\"]")]
    public void A_limit_is_asked_for_by_name_and_index(string expect, string name) =>
        Assert.Equal(name, Assert.IsType<Expectation.ByVehicle>(Well(expect, Number("A"))).Name);

    private static Value Constant(Expectation expect) =>
        Assert.IsType<Operand.Constant>(Assert.IsType<Expectation.EqualTo>(expect).Wanted).Value;

    private static IEnumerable<string> Items(string expect, JudgedValue judged) =>
        Assert.IsType<Expectation.OneOf>(Well(expect, judged)).Wanted.Select(operand => operand.ToString());
}
