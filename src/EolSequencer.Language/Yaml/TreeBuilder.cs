using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Source;
using EolSequencer.Model.Source;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace EolSequencer.Language.Yaml;

/// <summary>Makes nodes of the parser's events, one after the other, and refuses what this language leaves out of YAML.</summary>
internal sealed class TreeBuilder(SourceText source, Report report)
{
    /// <summary>Lists and maps that may lie inside each other.</summary>
    public const int MostDepth = 64;

    private readonly List<OpenNode> _open = [];
    private bool _sawDocument;

    /// <summary>The document's outermost node, once it is complete.</summary>
    public YamlNode? Root { get; private set; }

    /// <summary>The lists and maps not closed yet, outermost first.</summary>
    public IReadOnlyList<OpenNode> Open => _open;

    /// <summary>The node completed last.</summary>
    public YamlNode? LastNode { get; private set; }

    /// <summary>Offset behind the last scalar or bracket.</summary>
    public int LastEnd { get; private set; }

    /// <summary>The finding on a tag whose name, as the library reads it, includes the bracket that was to close its list or map.</summary>
    public Diagnostic? BracketTakenByTag { get; private set; }

    private bool InFlow => _open is [.., { IsFlow: true }];

    /// <summary>Takes the next event; false when nothing further shall be read.</summary>
    public bool Accept(ParsingEvent next) => next switch
    {
        DocumentStart start => AcceptDocument(start),
        Scalar scalar => AcceptScalar(scalar),
        AnchorAlias alias => AcceptAlias(alias),
        MappingStart map => AcceptStart(map, isFlow: map.Style == MappingStyle.Flow, isMap: true),
        SequenceStart list => AcceptStart(list, isFlow: list.Style == SequenceStyle.Flow, isMap: false),
        MappingEnd or SequenceEnd => AcceptEnd(next),
        _ => true,
    };

    private bool AcceptDocument(DocumentStart start)
    {
        if (_sawDocument)
        {
            report.Add(YamlCodes.SecondDocument, PlaceOf(start), "a second document begins here");
            return false;
        }

        _sawDocument = true;
        var from = OffsetOf(start.Start);
        if (source.Text.AsSpan(from) is ['%', ..])
            report.Add(YamlCodes.Directive, source.PlaceOf(from, source.EndOfLine(source.LineOf(from))), "directives are not supported");
        return true;
    }

    private bool AcceptScalar(Scalar scalar)
    {
        var (start, end) = (OffsetOf(scalar.Start), OffsetOf(scalar.End));
        if (!scalar.Tag.IsEmpty)
        {
            // The library takes "!word" off the value; the author meant all of it.
            end = TrimmedEnd(start, end);
            if (scalar.Value.Length == 0 || source.LineOf(start) == source.LineOf(end)) end = TextExtent.EndOf(source, start, InFlow);
            var isTyped = source.Text.AsSpan(start) is ['!', '!' or '<', ..];
            var finding = ReportTag(start, end, Quoting.Rewritten(source, start, end, Quoting.Quote(isTyped ? scalar.Value : source.Text[start..end])));
            if (InFlow && scalar.Tag.Value.AsSpan().ContainsAny(']', '}')) BracketTakenByTag = finding;
            return Add(new YamlScalar(source, start, end, source.Text[start..end], ScalarStyle.Plain));
        }

        if (!scalar.Anchor.IsEmpty)
        {
            ReportAnchor(start, scalar.Anchor);
            start = Math.Min(end, start + 1 + scalar.Anchor.Value.Length);
            while (start < end && char.IsWhiteSpace(source.Text[start])) start++;
        }

        var style = StyleOf(scalar.Style);
        if (style == ScalarStyle.Plain && scalar.Value.Length == 0) return Add(new YamlScalar(source, LastEnd, LastEnd, "", style));
        if (style is ScalarStyle.Literal or ScalarStyle.Folded) end = TrimmedEnd(start, end);
        return Add(ScalarCheck.Mended(new YamlScalar(source, start, end, scalar.Value, style), InFlow, report));
    }

    private bool AcceptAlias(AnchorAlias alias)
    {
        var place = PlaceOf(alias);
        report.Add(YamlCodes.Alias, place, $"the alias {Shown.Quoted("*" + alias.Value)} stands here");
        return Add(new YamlRefused(source, OffsetOf(alias.Start), OffsetOf(alias.End)));
    }

    private bool AcceptStart(NodeEvent start, bool isFlow, bool isMap)
    {
        var (from, to) = (OffsetOf(start.Start), OffsetOf(start.End));
        if (_open.Count == MostDepth)
        {
            report.Add(YamlCodes.TooDeep, source.PlaceOf(from, to), $"this would be level {MostDepth + 1} of lists and maps inside each other, {MostDepth} are allowed");
            return false;
        }

        if (!start.Anchor.IsEmpty) ReportAnchor(from, start.Anchor);
        if (!start.Tag.IsEmpty) ReportTag(from, TrimmedEnd(from, to), "delete it");
        if (!start.Anchor.IsEmpty || !start.Tag.IsEmpty) from = to;

        // In "[ a: b ]" the parser sees a map and gives it a place of its own making.
        if (_open is [.., var around] && from < around.Start) from = LastEnd;
        OpenNode node = isMap ? new OpenMap(source, from, isFlow, report) : new OpenList(source, from, isFlow);
        _open.Add(node);
        if (node.HasBracket) LastEnd = from + 1;
        return true;
    }

    private bool AcceptEnd(ParsingEvent end)
    {
        var closing = _open[^1];
        _open.RemoveAt(_open.Count - 1);
        return Add(closing.Close(OffsetOf(end.Start)));
    }

    private bool Add(YamlNode node)
    {
        LastNode = node;
        LastEnd = Math.Max(LastEnd, node.End);
        if (_open is [.., var around]) around.Add(node);
        else Root = node;
        return true;
    }

    private Diagnostic ReportTag(int start, int end, string hint)
    {
        var found = $"YAML takes {Shown.Quoted(source.Text[start..end])} for a tag, not for a text";
        var finding = new Diagnostic(YamlCodes.Tag, source.PlaceOf(start, end), found, hint);
        report.Add(finding);
        return finding;
    }

    private void ReportAnchor(int start, AnchorName anchor) => report.Add(
        YamlCodes.Anchor,
        source.PlaceOf(start, Math.Min(start + 1 + anchor.Value.Length, source.Text.Length)),
        $"the anchor {Shown.Quoted("&" + anchor.Value)} stands here");

    private SourcePlace PlaceOf(ParsingEvent one) => source.PlaceOf(OffsetOf(one.Start), OffsetOf(one.End));

    private int OffsetOf(Mark mark) => source.OffsetOf((int)mark.Line, (int)mark.Column);

    private int TrimmedEnd(int start, int end)
    {
        while (end > start && char.IsWhiteSpace(source.Text[end - 1])) end--;
        return end;
    }

    private static ScalarStyle StyleOf(YamlDotNet.Core.ScalarStyle style) => style switch
    {
        YamlDotNet.Core.ScalarStyle.SingleQuoted => ScalarStyle.SingleQuoted,
        YamlDotNet.Core.ScalarStyle.DoubleQuoted => ScalarStyle.DoubleQuoted,
        YamlDotNet.Core.ScalarStyle.Literal => ScalarStyle.Literal,
        YamlDotNet.Core.ScalarStyle.Folded => ScalarStyle.Folded,
        _ => ScalarStyle.Plain,
    };
}
