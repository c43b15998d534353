using System.Buffers;
using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Expectations;

/// <summary>The words that expectations begin with, and what an author may have meant by another one.</summary>
internal static class FormWords
{
    public static readonly SearchValues<char> NameCharacters =
        SearchValues.Create("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_");

    public static IReadOnlyList<string> All { get; } = ["at least", "at most", "equals", "one of", "only", "empty", "matches", "yes", "no"];

    private static readonly Dictionary<string, string> Meant = new(StringComparer.OrdinalIgnoreCase)
    {
        ["true"] = "yes", ["on"] = "yes", ["y"] = "yes", ["ok"] = "yes", ["false"] = "no", ["off"] = "no", ["n"] = "no",
        ["is"] = "equals", ["in"] = "one of", ["any"] = "one of", ["none"] = "empty", ["nothing"] = "empty", ["like"] = "matches",
        ["minimum"] = "at least", ["maximum"] = "at most", ["over"] = "at least", ["under"] = "at most", ["limit"] = "limits.",
    };

    /// <summary>What stands behind one of the words; null when the text does not begin with it.</summary>
    public static ScalarPart? Behind(ScalarPart part, string word) =>
        part.Span.StartsWith(word) && (part.Length == word.Length || !NameCharacters.Contains(part.Span[word.Length]))
            ? part.From(word.Length).Trim()
            : null;

    /// <summary>Reports a text that is no form of an expectation.</summary>
    public static void ReportUnknown(ScalarPart part, Report report)
    {
        if (part.IsEmpty)
        {
            report.Add(ExpectationCodes.UnknownForm, part.Place, "there is no expectation here");
        }
        else if (part.Span[0] is '+' or '-' or '\u2212' or '(' || char.IsAsciiDigit(part.Span[0]))
        {
            report.Add(
                ExpectationCodes.UnknownForm, part.Place, $"{Shown.Quoted(part.Text)} is one value, no window",
                $"write  equals {part.Text}  or a window such as  a .. b UNIT");
        }
        else
        {
            ReportWord(part, report);
        }
    }

    private static void ReportWord(ScalarPart part, Report report)
    {
        var end = part.Span.IndexOfAnyExcept(NameCharacters) is var at and >= 0 ? at : part.Length;
        var first = part.Before(end);
        var meant = Meant.GetValueOrDefault(first.Text) ?? Nearest.Of(first.Text, All) ?? TwoWords(part);
        report.Add(
            ExpectationCodes.UnknownForm, first.IsEmpty ? part.Place : first.Place,
            $"{Shown.Quoted(part.Text)} is no form of an expectation",
            meant is not null ? $"did you mean '{meant}'?" : end == part.Length ? $"for this text write  equals {part.Text}" : null);
    }

    /// <summary>One of the forms of two words that the first two words of the text are near.</summary>
    private static string? TwoWords(ScalarPart part)
    {
        var words = part.Text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return words.Length < 2 ? null : Nearest.Of($"{words[0]} {words[1]}", All);
    }
}
