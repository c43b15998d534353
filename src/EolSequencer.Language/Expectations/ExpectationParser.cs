using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Yaml;

namespace EolSequencer.Language.Expectations;

/// <summary>Reads what stands behind <c>expect</c>, <c>takes</c>, <c>window</c> or a limit, without knowing yet what it judges.</summary>
internal static class ExpectationParser
{
    private const string Limits = "limits.";

    /// <summary>The expectation; null: already reported.</summary>
    public static ExpectationSyntax? Parse(YamlNode node, Report report)
    {
        if (node is YamlScalar scalar) return Parse(ScalarPart.Whole(scalar), report);

        report.Add(ExpectationCodes.NoText, node.Place, $"{node.Kind} stands where an expectation is wanted");
        return null;
    }

    private static ExpectationSyntax? Parse(ScalarPart part, Report report)
    {
        foreach (var word in FormWords.All)
        {
            if (FormWords.Behind(part, word) is { } rest) return ParseForm(part, word, rest, report);
        }

        if (part.Span.StartsWith(Limits)) return ParseLimit(part, part.From(Limits.Length), report);
        if (LookAlikes.Report(part, report)) return null;
        if (WindowParser.HasMark(part.Span)) return WindowParser.Parse(part, report);

        FormWords.ReportUnknown(part, report);
        return null;
    }

    private static ExpectationSyntax? ParseForm(ScalarPart part, string word, ScalarPart rest, Report report) => word switch
    {
        "yes" or "no" => NothingBehind(word, rest, report) ? new ExpectationSyntax.Truth(part, word == "yes") : null,
        "empty" => NothingBehind(word, rest, report) ? new ExpectationSyntax.Empty(part) : null,
        "at least" or "at most" => WindowParser.ParseOneEnd(part, rest, isLow: word == "at least", report),
        "matches" => PatternParser.Parse(part, rest, report),
        "one of" => WrittenItems.ParseList(rest, report) is { } wanted ? new ExpectationSyntax.OneOf(part, wanted) : null,
        "only" => WrittenItems.ParseList(rest, report) is { } allowed ? new ExpectationSyntax.Only(part, allowed) : null,
        _ => ParseEqualTo(part, rest, report),
    };

    private static ExpectationSyntax.EqualTo? ParseEqualTo(ScalarPart part, ScalarPart rest, Report report)
    {
        if (!rest.IsEmpty) return WrittenItems.ParseOne(rest, report) is { } wanted ? new ExpectationSyntax.EqualTo(part, wanted) : null;

        report.Add(ExpectationCodes.UnknownForm, part.Place, "nothing stands behind 'equals'", "write the value behind it; for a text with nothing in it  empty");
        return null;
    }

    private static ExpectationSyntax.Limit? ParseLimit(ScalarPart part, ScalarPart name, Report report)
    {
        var end = name.Span.IndexOfAnyExcept(FormWords.NameCharacters) is var at and >= 0 ? at : name.Length;
        var rest = name.From(end).Trim();
        name = name.Before(end);
        if (!name.IsEmpty && rest.IsEmpty) return new ExpectationSyntax.Limit(part, name, null);
        if (!name.IsEmpty && rest.Span is ['[', _, .., ']']) return new ExpectationSyntax.Limit(part, name, rest.From(1, rest.Length - 2).Trim());

        report.Add(ExpectationCodes.UnknownForm, part.Place, $"{Shown.Quoted(part.Text)} names no limit", "write  limits.NAME  or  limits.NAME[index]");
        return null;
    }

    private static bool NothingBehind(string word, ScalarPart rest, Report report)
    {
        if (!rest.IsEmpty) report.Add(ExpectationCodes.BehindEnd, rest.Place, $"{Shown.Quoted(rest.Text)} stands behind '{word}'");
        return rest.IsEmpty;
    }
}
