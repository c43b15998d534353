using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expectations;
using EolSequencer.Language.Tests.Diagnostics;
using static EolSequencer.Language.Tests.Expectations.Judging;

namespace EolSequencer.Language.Tests.Expectations;

/// <summary>A limit that is read other than it was meant passes a vehicle that should fail; each known slip is named at its place.</summary>
public class ExpectationFaultTests
{
    [Fact]
    public void Faults_of_windows_stand_where_they_are() => ExpectedDiagnostics.Hold("""
        a: 2.4 .. 2.0 bar
        #  ^^^^^^^^^^^^^^ expect error WIN003
        b: ..
        #  ^^ expect error WIN004
        c: .. bar
        #  ^^^^^^ expect error WIN004
        d: 1.6 ... 2.4 bar
        #      ^^^ expect error WIN005
        e: 1.6 … 2.4 bar
        #      ^ expect error WIN005
        f: 1.6 – 2.4 bar
        #      ^ expect error WIN005
        g: –1.6 .. 2.4 bar
        #  ^ expect error WIN005
        h: 1.6 to 2.4 bar
        #     ^^^^ expect error WIN005
        i: 1.6 - 2.4 bar
        #     ^^^ expect error WIN005
        j: 1.6 .. 2.0 .. 2.4 bar
        #             ^^ expect error WIN008
        k: 140 +- 10 bar
        #      ^^ expect error WIN005
        l: 140 ± -10 bar
        #        ^^^ expect error WIN006
        m: (x) ± 10 bar
        #  ^^^^^^^^^^^^ expect error WIN006
        n: (x .. 10 bar
        #  ^ expect error WIN007
        o: (x) bar .. 10 bar
        #      ^^^ expect error UNT003
        p: at most (x) + 1
        #              ^^^ expect error WIN008
        q: 5 .. ten bar
        #       ^^^^^^^ expect error NUM002
        r: at least
        #          ^ expect error NUM002
        """, Check(Number("bar")));

    [Fact, Trait("case", "UNT-04"), Trait("case", "NUM-02")]
    public void Faults_of_numbers_stand_where_they_are() => ExpectedDiagnostics.Hold("""
        a: 2,5 .. 3 bar
        #  ^^^ expect error NUM001
        b: at most 2,5 bar
        #          ^^^ expect error NUM001
        c: .. 1 200 bar
        #     ^^^^^ expect error NUM001
        d: .. 1'200 bar
        #     ^^^^^ expect error NUM001
        e: .. 1e3 bar
        #     ^^^ expect error NUM001
        f: 01 .. 2 bar
        #  ^^ expect error NUM001
        g: .5 .. 2 bar
        #  ^^ expect error NUM001
        h: 1.2.3 .. 2 bar
        #  ^^^^^ expect error NUM001
        """, Check(Number("bar")));

    [Fact, Trait("case", "UNT-01"), Trait("case", "UNT-02"), Trait("case", "UNT-03"), Trait("case", "UNT-06")]
    public void Faults_of_units_stand_where_they_are() => ExpectedDiagnostics.Hold("""
        a: 1.6 .. 2.4
        #  ^^^^^^^^^^ expect error UNT002
        b: 1.6 bar .. 2.4
        #             ^^^ expect error UNT002
        c: 4 MPa .. 5 kPa
        #             ^^^ expect error UNT005
        d: at most 5 mPa
        #            ^^^ expect error UNT001
        e: at most 2 MBAR
        #            ^^^^ expect error UNT001
        f: at most 2 pt
        #            ^^ expect error UNT001
        g: at most 2 ºC
        #            ^^ expect error UNT001
        h: 1.6 .. 2.4 V
        #  ^^^^^^^^^^^^ expect error UNT004
        i: equals 5
        #         ^ expect error UNT002
        j: one of [1 bar, 2 V]
        #                 ^^^ expect error UNT004
        k: 1 .. (x)
        #  ^^^^^^^^ expect error UNT002
        l: at most 2 Mbar
        m: 10 ± 5 %
        #  ^^^^^^^^ expect error UNT004
        n: 10 bar ± 5 %
        #             ^ expect error UNT005
        """, Check(Number("bar")));

    [Fact]
    public void A_count_takes_no_unit() => ExpectedDiagnostics.Hold("""
        a: 1 .. 2 V
        #  ^^^^^^^^ expect error UNT003
        b: equals 2 %
        #         ^^^ expect error UNT003
        c: equals two
        #         ^^^ expect error NUM002
        """, Check(Count));

    [Fact, Trait("case", "UNT-02")]
    public void Milli_beside_mega_is_warned_of() => ExpectedDiagnostics.Hold("""
        a: at least 5 mohm
        #  ^^^^^^^^^^^^^^^ expect warning UNT006
        b: at least 500 kohm
        c: at least 5 Mohm
        """, Check(Number("Mohm")));

    [Fact]
    public void Faults_of_form_stand_where_they_are() => ExpectedDiagnostics.Hold("""
        a: OK
        #  ^^ expect error WIN002
        b: equal FV7
        #  ^^^^^ expect error WIN002
        c: one of steel, alloy
        #         ^^^^^^^^^^^^ expect error WIN009
        d: one of [steel, alloy
        #         ^ expect error WIN007
        e: one of [steel, , alloy]
        #         ^^^^^^^^^^^^^^^^ expect error WIN009
        f: one of []
        #  ^^^^^^^^^ expect error WIN009
        g: one of [a, b, a]
        #                ^ expect error WIN010
        h: matches [A-Z]+
        #          ^^^^^^ expect error WIN011
        i: matches /[A-Z+/
        #               ^ expect error WIN011
        i2: matches /(?=[A-Z])FV7/
        #            ^^^^^^^^^^^^ expect error WIN011
        i3: matches /(.)\1/
        #            ^^^^^ expect error WIN011
        i4: matches /((A{200}){200}){200}/
        #            ^^^^^^^^^^^^^^^^^^^^ expect error WIN011
        j: empty list
        #        ^^^^ expect error WIN008
        k: [a, b]
        #  ^ expect error WIN001
        l: equals
        #  ^ expect error WIN002
        m: limits.
        #  ^ expect error WIN002
        n: limits.idle-speed
        #  ^ expect error WIN002
        o: limits.idle speed
        #  ^ expect error WIN002
        p: one of [(a b]
        #          ^ expect error WIN007
        q: equals FV7-GWB-0412-LONG
        #         ^^^^^^^^^^^^^^^^^ expect error WIN014
        r: 5 .. 6 V
        #  ^^^^^^^^ expect error WIN012
        s: yes
        #  ^^^ expect error WIN012
        t: only [a]
        #  ^^^^^^^^ expect error WIN012
        """, Check(Text));

    [Fact]
    public void Each_kind_of_value_refuses_forms_that_cannot_judge_it()
    {
        ExpectedDiagnostics.Hold("a: equals P0420\n#  ^ expect error WIN012\nb: one of [a]\n#  ^ expect error WIN012\nc: only []\n#  ^ expect error WIN009\nd: only [(x)]\n#         ^ expect error WIN009\n", Check(List));
        ExpectedDiagnostics.Hold("a: equals yes\n#  ^ expect error WIN012\nb: true\n#  ^ expect error WIN002\nc: empty\n#  ^ expect error WIN012\n", Check(Truth));
        ExpectedDiagnostics.Hold("a: equals steal\n#         ^^^^^ expect error WIN014\nb: one of [steel, brass]\n#                 ^^^^^ expect error WIN014\n", Check(Choice));
        ExpectedDiagnostics.Hold("a: matches /5/\n#  ^ expect error WIN012\nb: empty\n#  ^ expect error WIN012\nc: at most 5 A\n#  ^ expect error UNT004\n", Check(Time));
    }

    [Fact]
    public void An_inexact_number_is_never_compared_exactly()
    {
        var fitted = Number("V") with { MayBeInexact = true };
        Assert.Equal("WIN013", Fault("equals 5 V", fitted).Code.Id);
        Assert.Equal("WIN013", Fault("one of [5 V, 6 V]", fitted).Code.Id);
        Well("4.9 .. 5.1 V", fitted);
    }

    [Theory]
    [InlineData("1.6 – 2.4 bar", "write  1.6 .. 2.4 bar")]
    [InlineData("–1.6 .. 2.4 bar", "write  -1.6 .. 2.4 bar")]
    [InlineData("1.6 … 2.4 bar", "write  1.6 .. 2.4 bar")]
    [InlineData("1.6 ... 2.4 bar", "write  1.6 .. 2.4 bar")]
    [InlineData("1.6 - 2.4 bar", "write  1.6 .. 2.4 bar")]
    [InlineData("140 +- 10 bar", "write  140 +/- 10 bar")]
    [InlineData("'>= 5 bar'", "write  at least 5 bar")]
    [InlineData("≤ 5 bar", "write  at most 5 bar")]
    [InlineData("max 5 bar", "write  at most 5 bar")]
    [InlineData("5 bar", "write  equals 5 bar  or a window such as  a .. b UNIT")]
    [InlineData("1.6 .. 2.4", "write  1.6 .. 2.4 bar")]
    [InlineData("1.6 .. 2.4 V", "write a unit of pressure: Pa, mbar, kPa, bar, MPa, Mbar, psi")]
    [InlineData("at most 2 MBAR", "case counts: mbar (milli) or Mbar (mega)?")]
    [InlineData("at most 20 C", "C alone is the coulomb; write °C or degC for a temperature")]
    [InlineData("equal 5 bar", "did you mean 'equals'?")]
    [InlineData("at lest 5 bar", "did you mean 'at least'?")]
    [InlineData("oneof [1 bar]", "did you mean 'one of'?")]
    [InlineData("minimum 5 bar", "did you mean 'at least'?")]
    [InlineData("OK", "did you mean 'yes'?")]
    [InlineData("at  most 5 bar", "did you mean 'at most'?")]
    [InlineData("READY", "for this text write  equals READY")]
    public void The_hint_is_what_the_author_should_have_written(string expect, string hint) =>
        Assert.Equal(hint, Fault(expect, Number("bar")).Hint);

    [Theory, MemberData(nameof(Cultures))]
    public void The_culture_of_the_station_does_not_matter(string culture)
    {
        var before = System.Globalization.CultureInfo.CurrentCulture;
        System.Globalization.CultureInfo.CurrentCulture = System.Globalization.CultureInfo.GetCultureInfo(culture);
        try
        {
            Assert.Equal("2.5 bar", ((Model.Sequences.Expectation.Within)Well("at most 2.5 bar", Number("bar"))).High!.ToString());
            Assert.Equal("NUM001", Fault("at most 2,5 bar", Number("bar")).Code.Id);
            Assert.Equal("the window ends at -2.5 bar, below its start at 1.5 bar", Fault("1.5 .. -2.5 bar", Number("bar")).Found);
        }
        finally
        {
            System.Globalization.CultureInfo.CurrentCulture = before;
        }
    }

    public static TheoryData<string> Cultures => ["en-US", "de-DE", "sv-SE", "tr-TR", "fr-FR"];
}
