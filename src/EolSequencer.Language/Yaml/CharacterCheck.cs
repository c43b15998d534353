using System.Buffers;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Source;

namespace EolSequencer.Language.Yaml;

/// <summary>
/// Finds what the parser would take for blanks, line breaks or letters without anybody seeing it: control characters,
/// foreign line separators, marks that reorder the text on the screen, and anything but blanks in front of a line.
/// </summary>
internal static class CharacterCheck
{
    private static readonly SearchValues<char> Refused = SearchValues.Create(
    [
        .. Range(0x00, 0x08), .. Range(0x0B, 0x0C), .. Range(0x0E, 0x1F), .. Range(0x7F, 0x9F),
        '\u2028', '\u2029', '\u202A', '\u202B', '\u202C', '\u202D', '\u202E', '\u2066', '\u2067', '\u2068', '\u2069',
        '\uFEFF', '\uFFFE', '\uFFFF',
    ]);

    // Blanks that do not indent: tab, fixed and typographic blanks, the wide blank of East Asia.
    private static readonly SearchValues<char> OddBlanks = SearchValues.Create(['\t', '\u00A0', '\u1680', .. Range(0x2000, 0x200B), '\u202F', '\u205F', '\u3000']);

    /// <summary>Reports each such character; true when there is none and the text may be parsed.</summary>
    public static bool Passes(SourceText source, Report report)
    {
        var hasInvisible = ReportInvisible(source, report);
        return !ReportIndentation(source, report) && !hasInvisible;
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

    private static bool ReportIndentation(SourceText source, Report report)
    {
        if (!source.Text.AsSpan().ContainsAny(OddBlanks)) return false;
        var count = 0;
        for (var line = 1; line <= source.LineCount && count < Report.MostErrors; line++)
        {
            var text = source.Line(line);
            var first = text.IndexOfAnyExcept(' ');
            if (first < 0 || !OddBlanks.Contains(text[first])) continue;
            count++;
            var place = source.PlaceOf(source.StartOfLine(line) + first, source.StartOfLine(line) + first + 1);
            if (text[first] == '\t') report.Add(YamlCodes.TabInIndentation, place, "a tab stands in front of this line; how wide it is nobody can tell");
            else report.Add(YamlCodes.InvisibleCharacter, place, $"{Shown.CodePoint(text[first])}, which looks like a blank, stands in front of this line", "indent with blanks");
        }

        return count > 0;
    }

    private static IEnumerable<char> Range(int first, int last) => Enumerable.Range(first, last - first + 1).Select(number => (char)number);
}
