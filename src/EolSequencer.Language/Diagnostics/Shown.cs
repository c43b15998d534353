using System.Globalization;
using System.Text;

namespace EolSequencer.Language.Diagnostics;

/// <summary>How an author's own words stand inside a message: short, on one line, nothing invisible.</summary>
internal static class Shown
{
    private const int Longest = 60;

    /// <summary>The text in single quotes, cut after 60 characters.</summary>
    public static string Quoted(string text) => $"'{Plain(text, Longest)}'";

    /// <summary>The text without quotes, line breaks and control characters made visible.</summary>
    /// <param name="longest">Where the text is cut, in UTF-16 units.</param>
    public static string Plain(string text, int longest)
    {
        var shown = new StringBuilder(Math.Min(text.Length, longest) + 1);
        foreach (var letter in text.EnumerateRunes())
        {
            if (shown.Length >= longest) return shown.Append('…').ToString();
            if (letter.Value == '\n') shown.Append('⏎');
            else if (Rune.IsControl(letter)) shown.Append(CodePoint(letter.Value));
            else shown.Append(letter);
        }

        return shown.ToString();
    }

    /// <summary>The words in single quotes with commas between and "or" before the last.</summary>
    public static string OneOf(IReadOnlyList<string> words) => words.Count switch
    {
        0 => "nothing",
        1 => $"'{words[0]}'",
        _ => string.Join(", ", words.SkipLast(1).Select(word => $"'{word}'")) + $" or '{words[^1]}'",
    };

    /// <summary>A character by its number, for example <c>U+0007</c>.</summary>
    public static string CodePoint(int number) => "U+" + number.ToString("X4", CultureInfo.InvariantCulture);
}
