using System.Buffers;
using System.Text;

namespace EolSequencer.Records.Exporting;

/// <summary>
/// Texts as values of a table after RFC 4180. A text that a spreadsheet would take for a formula, and one that begins with an apostrophe,
/// gets an apostrophe in front; who reads the table takes the first apostrophe away. Control characters other than line ends stand as their
/// pictures (U+2400 to U+2421, those above U+007F as U+FFFD): a terminal or a spreadsheet could obey them.
/// </summary>
internal static class CsvText
{
    // The full-width signs are taken for their narrow ones by some spreadsheets.
    private static readonly SearchValues<char> Triggers = SearchValues.Create("=+-@'\uFF1D\uFF0B\uFF0D\uFF20\u2212");
    private static readonly SearchValues<char> Special = SearchValues.Create(",\"\r\n");

    /// <summary>A value that is no text: a number as it stands, or nothing.</summary>
    public static string Of(ExportValue value) => value.Kind == ExportKind.Text ? Of(value.Text!) : value.Text ?? "";

    /// <summary>A text, made harmless and quoted where it must be.</summary>
    public static string Of(string text)
    {
        var shown = text.Any(IsHidden) ? string.Concat(text.Select(Shown)) : text;
        if (IsFormula(shown)) shown = "'" + shown;
        return shown.AsSpan().ContainsAny(Special) || HasBlankEnd(shown) ? $"\"{shown.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : shown;
    }

    /// <summary>Blanks and invisible characters in front do not keep a spreadsheet from seeing the sign.</summary>
    private static bool IsFormula(string text)
    {
        foreach (var rune in text.EnumerateRunes())
        {
            if (Rune.IsWhiteSpace(rune) || Rune.GetUnicodeCategory(rune) == System.Globalization.UnicodeCategory.Format) continue;
            return rune.IsBmp && Triggers.Contains((char)rune.Value);
        }

        return false;
    }

    private static bool HasBlankEnd(string text) => text.Length > 0 && (char.IsWhiteSpace(text[0]) || char.IsWhiteSpace(text[^1]));

    private static bool IsHidden(char character) => char.IsControl(character) && character is not ('\r' or '\n');

    private static char Shown(char character) => character switch
    {
        '\r' or '\n' => character,
        < ' ' => (char)('\u2400' + character),
        '\u007F' => '\u2421',
        _ when char.IsControl(character) => '\uFFFD',
        _ => character,
    };
}
