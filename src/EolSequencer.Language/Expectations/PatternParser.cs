using System.Globalization;
using System.Text.RegularExpressions;
using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Expectations;

/// <summary>Reads the regular expression of <c>matches /…/</c>.</summary>
/// <remarks>Patterns are matched without backtracking, in time that grows with the text alone; those that cannot be are refused.</remarks>
internal static partial class PatternParser
{
    private const RegexOptions Options = RegexOptions.CultureInvariant | RegexOptions.NonBacktracking;

    /// <summary>The most repetitions that the counts of a pattern multiply to.</summary>
    private const long MostRepetitions = 1000;

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
        if (Repetitions(pattern.Text) > MostRepetitions)
        {
            report.Add(ExpectationCodes.BadPattern, pattern.Place, $"the counts in the regular expression multiply to more than {MostRepetitions}");
            return null;
        }

        try
        {
            // The author's pattern is read alone first, so that an offset in a fault is one in the pattern; reading it is the same
            // for every way to match, and this one is ready soonest.
            _ = new Regex(pattern.Text, RegexOptions.CultureInvariant);
            return new ExpectationSyntax.Matches(part, pattern.Text, new Regex($@"\A(?:{pattern.Text})\z", Options));
        }
        catch (RegexParseException fault)
        {
            var at = Math.Clamp(fault.Offset - 1, 0, pattern.Length - 1);
            report.Add(ExpectationCodes.BadPattern, pattern.From(at, 1).Place, $"the regular expression cannot be read here ({Words(fault.Error)})");
            return null;
        }
        catch (NotSupportedException)
        {
            report.Add(ExpectationCodes.BadPattern, pattern.Place, "the regular expression looks ahead, looks back or refers back, which can take for ever", "write what the text consists of");
            return null;
        }
    }

    /// <summary>The product of all written counts: what the longest of them inside each other can come to.</summary>
    private static long Repetitions(string pattern)
    {
        var product = 1L;
        foreach (Match count in Count().Matches(pattern))
        {
            var most = long.TryParse(count.Groups["most"].Value, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : long.MaxValue;
            if (most > MostRepetitions) return most;
            product *= Math.Max(most, 1);
            if (product > MostRepetitions) return product;
        }

        return product;
    }

    /// <summary>The kind of fault in lower-case words: <c>unterminated bracket</c>.</summary>
    private static string Words(RegexParseError error) =>
        string.Concat(error.ToString().Select((letter, at) => at > 0 && char.IsUpper(letter) ? $" {char.ToLowerInvariant(letter)}" : $"{char.ToLowerInvariant(letter)}"));

    [GeneratedRegex(@"\{(?:[0-9]+,)?(?<most>[0-9]+),?\}")]
    private static partial Regex Count();
}
