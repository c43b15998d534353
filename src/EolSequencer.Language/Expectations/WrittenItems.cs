using System.Collections.Immutable;
using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Expectations;

/// <summary>Reads values whose kind only their use tells: one behind <c>equals</c>, several in square brackets.</summary>
internal static class WrittenItems
{
    /// <summary>One value; null: already reported.</summary>
    public static OperandSyntax? ParseOne(ScalarPart part, Report report) =>
        part.Span is ['(', ..] ? QuantityParser.ParseCode(part, report) : new OperandSyntax.Written(Unquoted(part), part);

    /// <summary>The values of <c>[a, b]</c>; null: already reported.</summary>
    public static ImmutableArray<OperandSyntax>? ParseList(ScalarPart part, Report report)
    {
        if (part.Span is not ['[', .., ']'])
        {
            if (part.Span is ['[', ..]) report.Add(ExpectationCodes.OpenBracket, part.From(0, 1).Place, "this bracket is not closed at the end of the text");
            else report.Add(ExpectationCodes.BadList, part.Place, part.IsEmpty ? "there is no list here" : $"{Shown.Quoted(part.Text)} is no list");
            return null;
        }

        var items = ImmutableArray.CreateBuilder<OperandSyntax>();
        var isWhole = true;
        foreach (var item in Split(part.From(1, part.Length - 2)))
        {
            if (item.IsEmpty)
            {
                report.Add(ExpectationCodes.BadList, part.Place, "a value is missing in this list");
                return null;
            }

            if (ParseOne(item, report) is { } operand) items.Add(operand);
            else isWhole = false;
        }

        return isWhole && NoneTwice(items, report) ? items.ToImmutable() : null;
    }

    private static bool NoneTwice(IEnumerable<OperandSyntax> items, Report report)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var twice = items.OfType<OperandSyntax.Written>().FirstOrDefault(item => !seen.Add(item.Text));
        if (twice is not null) report.Add(ExpectationCodes.NamedTwice, twice.Part.Place, $"{Shown.Quoted(twice.Text)} stands twice in this list");
        return twice is null;
    }

    /// <summary>The pieces between commas that stand outside quotes and C#.</summary>
    private static IEnumerable<ScalarPart> Split(ScalarPart inside)
    {
        if (inside.Trim().IsEmpty) yield break;

        var start = 0;
        for (var at = 0; at <= inside.Length; at++)
        {
            if (at == inside.Length || inside.Span[at] == ',')
            {
                yield return inside.From(start, at - start).Trim();
                start = at + 1;
            }
            else
            {
                at = EndOfGroup(inside.Span, at, start);
            }
        }
    }

    /// <summary>The offset where the C# or the quoted text that begins here ends; the same offset when neither begins here.</summary>
    private static int EndOfGroup(ReadOnlySpan<char> text, int at, int start)
    {
        if (text[at] == '(' && CodeBrackets.Close(text, at) is var close and > 0) return close;

        // An apostrophe inside a word is no quote.
        if (text[at] is not ('"' or '\'') || !text[start..at].Trim().IsEmpty) return at;
        var end = text[(at + 1)..].IndexOf(text[at]);
        return end < 0 ? at : at + 1 + end;
    }

    private static string Unquoted(ScalarPart part) =>
        part.Length >= 2 && part.Span[0] is '"' or '\'' && part.Span[^1] == part.Span[0] ? part.From(1, part.Length - 2).Text : part.Text;
}
