using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Source;

namespace EolSequencer.Language.Yaml;

/// <summary>Shows an author's own line with quotes put in where they belong.</summary>
internal static class Quoting
{
    private const int LongestLine = 160;
    private const int MostBefore = 80;

    /// <summary>The text as a YAML scalar in quotes: double ones, or single ones where the text has a double quote or a backslash.</summary>
    public static string Quote(string text) =>
        text.Contains('"') || text.Contains('\\') ? $"'{text.Replace("'", "''")}'" : $"\"{text}\"";

    /// <summary>"write" and the line in which the text lies, without its indentation, the text in quotes.</summary>
    /// <param name="start">Offset of the text's first character.</param>
    /// <param name="end">Offset behind its last character, in the same line; further ones are not looked at.</param>
    public static string Hint(SourceText source, int start, int end) =>
        Rewritten(source, start, end, Quote(source.Text[start..Math.Max(start, LastInLine(source, start, end))]));

    /// <summary>"write" and the line with the characters from <paramref name="start"/> to <paramref name="end"/> replaced.</summary>
    public static string Rewritten(SourceText source, int start, int end, string replacement)
    {
        var line = source.LineOf(start);
        var lineStart = source.StartOfLine(line);
        var from = Math.Max(lineStart, start - MostBefore);
        var last = LastInLine(source, start, end);
        var before = source.Text[from..start].TrimStart();
        var after = source.Text[last..Math.Min(source.EndOfLine(line), last + LongestLine)].TrimEnd();
        return $"write  {(from > lineStart ? "…" : "")}{Shown.Plain(before + replacement + after, LongestLine)}";
    }

    /// <summary>The line with a blank put in behind a colon. A blank of another kind that stands there is replaced.</summary>
    public static string ColonHint(SourceText source, int colon)
    {
        var isOddBlank = colon + 1 < source.Text.Length && char.IsWhiteSpace(source.Text[colon + 1]);
        return Rewritten(source, colon, isOddBlank ? colon + 2 : colon + 1, ": ");
    }

    private static int LastInLine(SourceText source, int start, int end) => Math.Min(end, source.EndOfLine(source.LineOf(start)));
}
