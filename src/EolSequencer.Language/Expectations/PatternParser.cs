using System.Text.RegularExpressions;
using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Expectations;

/// <summary>Reads the regular expression of <c>matches /…/</c>.</summary>
internal static class PatternParser
{
    /// <summary>Longer than any honest match of a label or part number takes, and short enough for a line.</summary>
    private static readonly TimeSpan Longest = TimeSpan.FromMilliseconds(100);

    /// <summary>The expression; null: already reported.</summary>
    /// <param name="part">The whole expectation.</param>
    /// <param name="slashes">The text behind <c>matches</c>.</param>
    public static ExpectationSyntax? Parse(ScalarPart part, ScalarPart slashes, Report report)
    {
        if (slashes.Span is not ['/', _, .., '/'])
        {
            report.Add(ExpectationCodes.BadPattern, slashes.Place, slashes.IsEmpty ? "there is no regular expression here" : $"{Shown.Quoted(slashes.Text)} does not stand between two slashes");
            return null;
        }

        var pattern = slashes.From(1, slashes.Length - 2);
        try
        {
            // The author's pattern is read alone first, so that an offset in a fault is one in the pattern.
            _ = new Regex(pattern.Text, RegexOptions.CultureInvariant, Longest);
            return new ExpectationSyntax.Matches(part, pattern.Text, new Regex($@"\A(?:{pattern.Text})\z", RegexOptions.CultureInvariant, Longest));
        }
        catch (RegexParseException fault)
        {
            var at = Math.Clamp(fault.Offset - 1, 0, pattern.Length - 1);
            report.Add(ExpectationCodes.BadPattern, pattern.From(at, 1).Place, $"the regular expression cannot be read here ({Words(fault.Error)})");
            return null;
        }
    }

    /// <summary>The kind of fault in lower-case words: <c>unterminated bracket</c>.</summary>
    private static string Words(RegexParseError error) =>
        string.Concat(error.ToString().Select((letter, at) => at > 0 && char.IsUpper(letter) ? $" {char.ToLowerInvariant(letter)}" : $"{char.ToLowerInvariant(letter)}"));
}
