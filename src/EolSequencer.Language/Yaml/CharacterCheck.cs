using System.Buffers;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Source;

namespace EolSequencer.Language.Yaml;

/// <summary>
/// Finds what the parser would take for blanks, line breaks or letters without anybody seeing it: control characters,
/// foreign line separators, marks that reorder the text on the screen, and tabs in front of a line.
/// </summary>
internal static class CharacterCheck
{
    private static readonly SearchValues<char> Refused = SearchValues.Create(
    [
        .. Range(0x00, 0x08), .. Range(0x0B, 0x0C), .. Range(0x0E, 0x1F), .. Range(0x7F, 0x9F),
        '\u2028', '\u2029', '\u202A', '\u202B', '\u202C', '\u202D', '\u202E', '\u2066', '\u2067', '\u2068', '\u2069',
        '\uFEFF', '\uFFFE', '\uFFFF',
    ]);

    /// <summary>Reports each such character; true when there is none and the text may be parsed.</summary>
    public static bool Passes(SourceText source, Report report)
    {
        var hasInvisible = ReportInvisible(source, report);
        return !ReportTabs(source, report) && !hasInvisible;
    }

    private static bool ReportInvisible(SourceText source, Report report)
    {
        var count = 0;
        for (var from = 0; count < Report.MostErrors && source.Text.AsSpan(from).IndexOfAny(Refused) is var found and >= 0; from += found + 1)
        {
            var at = from + found;
            count++;
            report.Add(YamlCodes.InvisibleCharacter, source.PlaceOf(at, at + 1), $"the invisible character {Shown.CodePoint(source.Text[at])} stands here");
        }

        return count > 0;
    }

    private static bool ReportTabs(SourceText source, Report report)
    {
        if (!source.Text.Contains('\t')) return false;
        var count = 0;
        for (var line = 1; line <= source.LineCount && count < Report.MostErrors; line++)
        {
            var text = source.Line(line);
            var indentation = text[..^text.TrimStart(" \t").Length];
            var tab = indentation.IndexOf('\t');
            if (tab < 0) continue;
            count++;
            var start = source.StartOfLine(line);
            report.Add(YamlCodes.TabInIndentation, source.PlaceOf(start + tab, start + tab + 1), "a tab stands in front of this line; how wide it is nobody can tell");
        }

        return count > 0;
    }

    private static IEnumerable<char> Range(int first, int last) => Enumerable.Range(first, last - first + 1).Select(number => (char)number);
}
