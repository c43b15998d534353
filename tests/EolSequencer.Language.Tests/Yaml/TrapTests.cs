using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Source;
using EolSequencer.Language.Tests.Diagnostics;
using EolSequencer.Language.Yaml;

namespace EolSequencer.Language.Tests.Yaml;

/// <summary>Each silent trap is named at its place, and what authors may write freely is left alone.</summary>
public sealed class TrapTests
{
    [Fact]
    public void Texts_cut_short_are_named_at_the_cut() => Holds("""
        ask: Fit door #2 left
        #             ^^^^^^^ expect error YML021
        expect: matches /a #b/   # a pattern
        #                  ^ expect error YML021
        title: #5 seat
        # expect error YML021
        when: !bus.ignition
        #     ^^^^^^^^^^^^^ expect error YML013
        step: { ask: Open door, then close, until: bus.closed }
        #                     ^ expect error YML022
        among: [steel, !alloy]
        #              ^^^^^^ expect error YML013
        """);

    [Fact]
    public void Keys_and_values_that_run_together_are_named() => Holds("""
        step: { step:ready, ask: Wait. }
        #           ^ expect error YML023
        title: Brake lamps
          class:safety
        #      ^ expect error YML023
        max:
        # expect error YML020
        min: { from: , to: 5 }
        #      ^^^^ expect error YML020
        """);

    [Fact]
    public void What_this_language_leaves_out_is_named_one_by_one() => Holds("""
        common: &c { within: 5 s }
        #       ^^ expect error YML010
        first: { <<: *c }
        #        ^^ expect error YML012
        #            ^^ expect error YML011
        within: 5 s
        within: 6 s
        # expect error YML014
        [a, b]: c
        # expect error YML015
        """);

    [Fact]
    public void A_file_that_ends_early_still_names_what_came_before() => Holds("""
        max:
        # expect error YML020
        unit: %
        #     ^ expect error YML025
        """);

    [Theory]
    [InlineData("ask: Fit: door", "YML027", 9)]
    [InlineData("when: ready ? 1 : 2", "YML027", 17)]
    [InlineData("step: { until: bus.a[b] }", "YML024", 21)]
    [InlineData("step: { ask: Lower {side} }", "YML024", 20)]
    [InlineData("unit: '%' here", "YML026", 11)]
    [InlineData("until: >= 5", "YML025", 8)]
    [InlineData("expect: @x", "YML025", 9)]
    [InlineData("list: [1, 2", "YML031", 7)]
    [InlineData("list: [1, 2\nnext: 3", "YML031", 7)]
    [InlineData("text: \"never closed", "YML030", 7)]
    [InlineData("key:\u00A0value\nnext: 1", "YML023", 4)]
    public void What_stops_the_reader_is_named_at_its_cause(string document, string code, int column)
    {
        var finding = Texts.OnlyFinding(document);
        Assert.Equal((code, 1, column), (finding.Code.Id, finding.Place.Line, finding.Place.Column));
    }

    [Fact]
    public void A_blank_that_is_none_in_front_of_a_line_is_named() =>
        Assert.Equal("YML002", Texts.OnlyFinding("step:\n\u00A0 ask: Wait.\n").Code.Id);

    [Fact]
    public void What_is_written_freely_is_left_alone() => Texts.ReadWell("""
        # A comment of a whole line, with #hash and : colon
        within: 5 s   # time
        takes: .. 5 s # closed window
        expect: 60 .. 120 1/min       # a rate: 90 ± 30 per minute
        ask: Press the pedal.         # (higher − lower) / higher
        unit: '%' #note behind quotes
        pattern: matches /a#b/        # no blank in front of the first hash
        port: C#4
        address: http://192.0.2.10:8080
        time: '06:00'
        ruled: 5 s   ## ---- a ruled line
        ruler: 5 s   #-----
        text: It's five o'clock, isn't it?
        window: (a + b)   # brackets that pair
        lookup: results.force["fl"].N
        flow: { ask: "Open: {door}.", until: "bus.door[door]", unit: '%', to: 0+16 }   # all of it
        list: [fl, fr, rl, rr]        # four wheels
        many: [
          a,   # first
          b,
        ]
        text_in_lines: Hold the pedal
          until the lamp is lit
        block: |
          key: value
          - #5 and "quotes
        quoted: "a long text: with #5
          and a second line"
        nothing: ''
        negative: -5 .. 5 °C
        question: ready?
        """);

    [Fact]
    public void No_file_of_the_demo_plant_steps_into_a_trap() => Assert.All(RepositoryFiles.Named("*.yaml"), path =>
    {
        var report = new Report();
        Assert.NotNull(YamlReader.Read(SourceFiles.TryRead(path, report)!, report));
        Assert.Empty(report.InOrder);
    });

    private static void Holds(string document) => ExpectedDiagnostics.Hold(document, (source, report) => YamlReader.Read(source, report));
}
