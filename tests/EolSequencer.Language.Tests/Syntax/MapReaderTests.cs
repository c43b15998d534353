using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Tests.Diagnostics;
using EolSequencer.Language.Yaml;

namespace EolSequencer.Language.Tests.Syntax;

/// <summary>Every binder reads its keys through this, so a slip in a key or value is named in all files alike.</summary>
public sealed class MapReaderTests
{
    private static readonly MapShape Step = new(
        "a step",
        ["step"],
        [
            "title", "ask", "read", "wait", "edge", "on-fail", "among", "window", "with", "every",
            new("within", Forms.Duration(TimeSpan.Zero, TimeSpan.FromHours(1)), ""),
            new("retry", Forms.Whole(0, 10), ""),
            new("address", Forms.Whole(0, 0x7FF), ""),
        ]);

    private static readonly MapShape WindowShape = new("'window'", ["low", "high"], []);

    private static readonly Words<DayOfWeek> OnFail = new(("continue", DayOfWeek.Monday), ("stop", DayOfWeek.Tuesday));

    [Fact]
    public void Values_are_read_by_key()
    {
        var (map, report) = Open("""
            step: ready
            title: { en: Ready, es: Listo }
            within: 1.5 min
            retry: 2
            edge: no
            on-fail: stop
            among: [a, b]
            address: 0x7E0
            with: { side: left }
            """);
        Assert.Equal("ready", map!.Text("step")!.Text);
        Assert.Equal("Listo", map.Texts("title")!.ToLocalText().For("es"));
        Assert.Equal(TimeSpan.FromSeconds(90), map.Duration("within"));
        Assert.Equal(2, map.Whole("retry"));
        Assert.Equal(0x7E0, map.Whole("address"));
        Assert.False(map.YesNo("edge"));
        Assert.Equal(DayOfWeek.Tuesday, map.Word("on-fail", OnFail));
        Assert.Equal(2, map.List("among").Count);
        Assert.Equal("left", Assert.IsType<YamlScalar>(map.FreeMap("with")!.Find("side")!.Value).Text);
        Assert.Empty(report.InOrder);
    }

    [Fact]
    public void An_absent_key_gives_nothing_and_is_no_fault()
    {
        var (map, report) = Open("step: ready\n");
        Assert.Null(map!.Text("title"));
        Assert.Null(map.Duration("within"));
        Assert.Null(map.Word("on-fail", OnFail));
        Assert.Empty(map.List("among"));
        Assert.Empty(map.OneOrMore("among"));
        Assert.Null(map.Open("window", WindowShape));
        Assert.False(map.Has("title"));
        Assert.Empty(report.InOrder);
    }

    [Fact]
    public void Keys_and_values_that_do_not_fit_are_named_at_their_places() => ExpectedDiagnostics.Hold("""
        stepp: ready
        # expect error SYN002
        # expect error SYN001
        title: [a, b]
        #      ^^^^^^ expect error SYN003
        ask: ''
        #    ^^ expect error SYN005
        read: { x: 1 }
        #     ^^^^^^^^ expect error SYN003
        within: 5 V
        #         ^ expect error SYN016
        retry: 20
        #      ^^ expect error SYN013
        edge: on
        #     ^^ expect error SYN015
        on-fail: stopp
        #        ^^^^^ expect error SYN018
        among: steel
        #      ^^^^^ expect error SYN003
        with: side:left
        #         ^ expect error YML023
        window: { low: 1, hihg: 2 }
        #         ^^^ expect error SYN002
        #                 ^^^^ expect error SYN001
        """, (source, report) =>
    {
        var map = MapReader.Open(YamlReader.Read(source, report)!, Step, report)!;
        Assert.Null(map.Texts("title"));
        Assert.Null(map.Text("ask"));
        Assert.Null(map.Text("read"));
        Assert.Null(map.Duration("within"));
        Assert.Null(map.Whole("retry"));
        Assert.Null(map.YesNo("edge"));
        Assert.Null(map.Word("on-fail", OnFail));
        Assert.Empty(map.List("among"));
        Assert.Null(map.FreeMap("with"));
        Assert.NotNull(map.Open("window", WindowShape));
    });

    [Fact]
    public void What_the_reader_refused_is_not_reported_again()
    {
        var (map, report) = Open("step: ready\ntitle:\nwithin: *alias\namong:\nwindow:\n");
        Assert.True(map!.Has("title"));
        Assert.Null(map.Find("title"));
        Assert.Null(map.Texts("title"));
        Assert.Null(map.Duration("within"));
        Assert.Empty(map.List("among"));
        Assert.Null(map.Open("window", WindowShape));
        Assert.Equal(["YML020", "YML011", "YML020", "YML020"], report.InOrder.Select(one => one.Code.Id));
    }

    [Fact]
    public void A_key_is_only_read_as_what_its_shape_says_it_is()
    {
        var (map, _) = Open("step: ready\nwithin: 5 s\nretry: 2\n");
        Assert.Throws<ArgumentException>(() => map!.YesNo("within"));
        Assert.Throws<ArgumentException>(() => map!.Word("retry", OnFail));
        Assert.Throws<ArgumentException>(() => map!.Open("retry", WindowShape));
        Assert.Throws<ArgumentException>(() => map!.Text("elsewhere"));
    }

    [Theory]
    [InlineData("among: a", 1)]
    [InlineData("among: [a, b]", 2)]
    [InlineData("among: []", 0)]
    public void One_item_may_stand_without_brackets(string line, int count) =>
        Assert.Equal(count, Open($"step: ready\n{line}\n").Map!.OneOrMore("among").Count);

    [Theory]
    [InlineData("step: s\nask: Wait.\n", "ask", null)]
    [InlineData("step: s\n", null, 1)]
    [InlineData("step: s\nread: bus.x\nask: Wait.\n", null, 3)]
    public void Exactly_one_of_several_keys_is_there(string document, string? key, int? line)
    {
        var (map, report) = Open(document);
        Assert.Equal(key, map!.ExactlyOne(["ask", "read", "wait"], "action"));
        Assert.Equal(line, report.InOrder.FirstOrDefault()?.Place.Line);
        Assert.All(report.InOrder, one => Assert.Equal(SyntaxCodes.OneOfTheseKeys, one.Code));
    }

    [Fact]
    public void A_key_that_our_own_code_does_not_declare_is_a_broken_assumption() =>
        Assert.Throws<ArgumentException>(() => Open("step: s\n").Map!.Text("steps"));

    [Fact]
    public void A_list_where_a_map_is_wanted_is_marked_in_its_first_line_only()
    {
        var (map, report) = Open("- a\n- b\n");
        Assert.Null(map);
        var place = Assert.Single(report.InOrder).Place;
        Assert.Equal((1, 1, 1, 4), (place.Line, place.Column, place.EndLine, place.EndColumn));
    }

    private static (MapReader? Map, Report Report) Open(string document)
    {
        var (root, report) = Texts.Read(document);
        return (MapReader.Open(root!, Step, report), report);
    }
}
