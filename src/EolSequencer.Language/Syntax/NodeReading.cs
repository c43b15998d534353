using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Source;

namespace EolSequencer.Language.Syntax;

/// <summary>
/// Takes nodes for what is expected in their place. Each method gives <c>null</c> for a node that does not fit, which it
/// has then reported, and for one that the reader had already refused.
/// </summary>
/// <remarks>In all of them <c>what</c> says in a message what the value is for: "'within'", "an entry of 'route'".</remarks>
internal static class NodeReading
{
    /// <summary>A text with something in it, exactly as written: <c>007</c>, <c>1.20</c> and <c>NO</c> are texts.</summary>
    public static YamlScalar? AsText(this YamlNode node, string what, Report report)
    {
        if (node is not YamlScalar text)
        {
            ReportKind(node, what, "a text", report);
            return null;
        }

        if (text.Text.Length == 0)
        {
            report.Add(SyntaxCodes.EmptyText, text.Place, $"{what} is an empty text");
            return null;
        }

        if (text.IsPlain && text.Text is "~" or "null")
        {
            report.Add(SyntaxCodes.NoNull, text.Place, $"{what} is '{text.Text}', and there is no null");
            return null;
        }

        return text;
    }

    public static IReadOnlyList<YamlNode>? AsList(this YamlNode node, string what, Report report)
    {
        if (node is YamlList list) return list.Items;
        ReportKind(node, what, "a list", report, "write  [a, b]  or lines that begin with  -");
        return null;
    }

    public static YamlMap? AsMap(this YamlNode node, string what, Report report)
    {
        if (node is YamlMap map) return map;
        if (node is YamlScalar { IsPlain: true, IsVerbatim: true } text && LineShape.GluedColon(text.Text) is var colon and >= 0)
        {
            report.Add(
                YamlCodes.NoBlankAfterColon,
                text.PlaceOf(colon, 1),
                $"no blank follows this colon, so {Shown.Quoted(text.Text)} is a text and no map",
                Quoting.ColonHint(text.Source, text.Start + colon));
            return null;
        }

        ReportKind(node, what, "a map", report, "write  key: value");
        return null;
    }

    internal static void ReportKind(YamlNode node, string what, string wanted, Report report, string? hint = null)
    {
        if (node is not YamlRefused) report.Add(SyntaxCodes.WrongKind, PlaceOfKind(node), $"{what} is to be {wanted}, here is {node.Kind}", hint);
    }

    // A long list or map would mark half the file: its first line is enough.
    private static SourcePlace PlaceOfKind(YamlNode node)
    {
        var lineEnd = node.Source.EndOfLine(node.Source.LineOf(node.Start));
        return node.Source.PlaceOf(node.Start, Math.Max(node.Start, Math.Min(node.End, lineEnd)));
    }
}
