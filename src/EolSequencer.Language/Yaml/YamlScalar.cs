using EolSequencer.Language.Source;
using EolSequencer.Model.Source;

namespace EolSequencer.Language.Yaml;

/// <summary>
/// A text. What it means – a number, a truth value, an expression – is decided by whoever reads it for a key:
/// <c>yes</c>, <c>0123</c> and <c>1:30</c> stay as written.
/// </summary>
internal sealed class YamlScalar(SourceText source, int start, int end, string text, ScalarStyle style) : YamlNode(source, start, end)
{
    private ScalarMap? _map;

    /// <summary>The text as YAML understands it: without quotes, escapes decoded, folded lines joined.</summary>
    public string Text { get; } = text;

    public ScalarStyle Style { get; } = style;

    public override string Kind => Text.Length == 0 ? "an empty text" : "a text";

    public bool IsPlain => Style == ScalarStyle.Plain;

    /// <summary>The place of the text itself, without quotes or block header.</summary>
    public SourcePlace ContentPlace => PlaceOf(0, Text.Length);

    /// <summary>
    /// True when the text stands in one line of the file exactly as in <see cref="Text"/>, so that an offset in one is an
    /// offset in the other.
    /// </summary>
    public bool IsVerbatim => Map.IsVerbatim;

    /// <summary>The comment behind the value in its last line, or <c>null</c>.</summary>
    public TrailingComment? CommentAfter
    {
        get
        {
            var letters = Source.Text;
            var hash = End;
            while (hash < letters.Length && letters[hash] is ' ' or '\t') hash++;
            if (hash == End || hash >= letters.Length || letters[hash] != '#') return null;
            var lineEnd = Source.EndOfLine(Source.LineOf(hash));
            return new TrailingComment(hash - End, letters[(hash + 1)..lineEnd], Source.PlaceOf(hash, lineEnd));
        }
    }

    /// <summary>
    /// Where a part of <see cref="Text"/> stands in the file: exact for every character that is not a blank or a line break;
    /// a joined line break is placed at the break.
    /// </summary>
    /// <param name="start">Offset in <see cref="Text"/>; beyond its ends counts as the end.</param>
    /// <param name="length">Number of UTF-16 units.</param>
    public SourcePlace PlaceOf(int start, int length)
    {
        var from = Math.Clamp(start, 0, Text.Length);
        var to = Math.Clamp(start + length, from, Text.Length);
        var first = Map.StartOf(from);
        return Source.PlaceOf(first, from == to ? first : Math.Max(first, Map.EndOf(to - 1)));
    }

    private ScalarMap Map => _map ??= ScalarMap.Of(this);

    public override string ToString() => Text;
}
