using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Yaml;

namespace EolSequencer.Language.Tests.Yaml;

/// <summary>What later passes build on: texts as written, keys in order, and every node with its place.</summary>
public sealed class YamlReaderTests
{
    [Theory]
    [InlineData("yes")]
    [InlineData("NO")]
    [InlineData("on")]
    [InlineData("1:30")]
    [InlineData("0123")]
    [InlineData("1.20")]
    [InlineData("3E7")]
    [InlineData("~")]
    [InlineData("null")]
    [InlineData("0x7E0")]
    [InlineData("2027-03-31")]
    public void A_plain_value_stays_the_text_that_was_written(string text)
    {
        var scalar = Texts.FirstScalar($"key: {text}\n");
        Assert.Equal(text, scalar.Text);
        Assert.Equal(ScalarStyle.Plain, scalar.Style);
    }

    [Theory]
    [InlineData("'it''s'", "it's", ScalarStyle.SingleQuoted)]
    [InlineData("\"a\\tb\"", "a\tb", ScalarStyle.DoubleQuoted)]
    [InlineData("|\n  a\n  b\n", "a\nb\n", ScalarStyle.Literal)]
    [InlineData(">\n  a\n  b\n", "a b\n", ScalarStyle.Folded)]
    [InlineData("a\n  b", "a b", ScalarStyle.Plain)]
    internal void The_style_is_kept_beside_the_text(string written, string text, ScalarStyle style)
    {
        var scalar = Texts.FirstScalar($"key: {written}\n");
        Assert.Equal((text, style), (scalar.Text, scalar.Style));
    }

    [Fact]
    public void Entries_come_in_written_order_and_are_found_by_key()
    {
        var map = Assert.IsType<YamlMap>(Texts.ReadWell("b: 1\na: { d: 2, c: [x, y] }\n"));
        Assert.Equal(["b", "a"], map.Entries.Select(entry => entry.Key.Text));
        var inner = Assert.IsType<YamlMap>(map.Find("a")!.Value);
        var list = Assert.IsType<YamlList>(inner.Find("c")!.Value);
        Assert.Equal(["x", "y"], list.Items.Select(item => Assert.IsType<YamlScalar>(item).Text));
        Assert.Null(map.Find("A"));
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public void Every_node_has_its_place_whatever_ends_the_lines(string lineEnd)
    {
        const string document = "sequence: täst\nsteps:\n  - step: a   # first\n    list: [ 'x', {k: v} ]\n  - - 😀 b\n";
        var root = Assert.IsType<YamlMap>(Texts.ReadWell(document.Replace("\n", lineEnd)));
        var steps = Assert.IsType<YamlList>(root.Find("steps")!.Value);
        var first = Assert.IsType<YamlMap>(steps.Items[0]);
        var list = Assert.IsType<YamlList>(first.Find("list")!.Value);

        Assert.Equal("1:1-5:11", Span(root));
        Assert.Equal("1:11-1:15", Span(root.Entries[0].Value));
        Assert.Equal("3:3-5:11", Span(steps));
        Assert.Equal("3:5-4:26", Span(first));
        Assert.Equal("3:11-3:12", Span(first.Entries[0].Value));
        Assert.Equal("4:11-4:26", Span(list));
        Assert.Equal("4:13-4:16", Span(list.Items[0]));
        Assert.Equal("4:18-4:24", Span(list.Items[1]));
        Assert.Equal("5:5-5:11", Span(steps.Items[1]));
        Assert.Equal("5:7-5:11", Span(Assert.IsType<YamlList>(steps.Items[1]).Items[0]));
    }

    [Fact]
    public void A_map_without_braces_in_a_list_begins_at_its_key()
    {
        var list = Assert.IsType<YamlList>(Assert.IsType<YamlMap>(Texts.ReadWell("a: [x: 1, y]\n")).Entries[0].Value);
        Assert.Equal(["1:5-1:9", "1:11-1:12"], list.Items.Select(Span));
        Assert.Equal("1:4-1:13", Span(list));
    }

    [Fact]
    public void A_byte_order_mark_does_not_shift_columns()
    {
        var root = Assert.IsType<YamlMap>(Texts.ReadWell("\uFEFFkey: 1\n"));
        Assert.Equal("1:1-1:4", Span(root.Find("key")!.Key));
    }

    [Theory]
    [InlineData(63, true)]
    [InlineData(64, false)]
    public void Sixty_four_levels_are_the_most(int lists, bool isRead)
    {
        var (root, report) = Texts.Read($"a: {new string('[', lists)}x{new string(']', lists)}\n");
        Assert.Equal(isRead, root is not null);
        if (!isRead) Assert.Equal("test.yaml:1:67: error YML004", Assert.Single(report.InOrder).ToString()[..28]);
    }

    [Theory]
    [InlineData('[')]
    [InlineData('{')]
    [InlineData('-')]
    [InlineData('?')]
    public void A_hundred_thousand_levels_end_at_the_sixty_fifth(char opening)
    {
        var text = string.Concat(Enumerable.Repeat(opening is '-' or '?' ? $"{opening} " : $"{opening}", 100_000));
        Assert.Equal(YamlCodes.TooDeep, Texts.OnlyFinding(text).Code);
    }

    [Fact]
    public void A_fault_does_not_hide_the_next_one() => Assert.Equal(
        ["YML014", "YML020", "YML021", "YML013"],
        Texts.Read("a: 1\na: 2\nb:\nc: Door #2\nd: !x\n").Report.InOrder.Select(one => one.Code.Id));

    [Fact]
    public void What_was_mended_carries_what_its_author_meant()
    {
        var root = Assert.IsType<YamlMap>(Texts.Read("""
            when: !bus.ignition
            ask: Fit door #2 left
            title: #5 seat
            step: { ask: Open door, then close, until: bus.x, within:5 s, unit: N }
            max:
            """).Root);
        Assert.Equal("!bus.ignition", Assert.IsType<YamlScalar>(root.Find("when")!.Value).Text);
        Assert.Equal("Fit door #2 left", Assert.IsType<YamlScalar>(root.Find("ask")!.Value).Text);
        Assert.Equal("#5 seat", Assert.IsType<YamlScalar>(root.Find("title")!.Value).Text);
        Assert.IsType<YamlRefused>(root.Find("max")!.Value);
        var step = Assert.IsType<YamlMap>(root.Find("step")!.Value);
        Assert.Equal(["ask", "until", "within", "unit"], step.Entries.Select(entry => entry.Key.Text));
        Assert.Equal("Open door, then close", Assert.IsType<YamlScalar>(step.Find("ask")!.Value).Text);
        Assert.Equal("5 s", Assert.IsType<YamlScalar>(step.Find("within")!.Value).Text);
    }

    [Fact]
    public void The_comment_behind_a_value_is_known()
    {
        var comment = Texts.FirstScalar("within: 5 s   # time\nnext: 1\n").CommentAfter!;
        Assert.Equal((3, " time", 15), (comment.Spaces, comment.Text, comment.Place.Column));
        Assert.Null(Texts.FirstScalar("within: 5 s\n# time\n").CommentAfter);
        Assert.Null(Texts.FirstScalar("within: '5 # s'\n").CommentAfter);
    }

    private static string Span(YamlNode node) => $"{node.Place.Line}:{node.Place.Column}-{node.Place.EndLine}:{node.Place.EndColumn}";
}
