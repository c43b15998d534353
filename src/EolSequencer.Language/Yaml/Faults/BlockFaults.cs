using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Yaml.Faults;

/// <summary>Faults outside of brackets: colons in texts, lines in the wrong column, lines that are no entry.</summary>
internal static class BlockFaults
{
    public static Diagnostic? Explain(FaultSite site)
    {
        if (site.Letter is ']' or '}') return TooMany(site);
        if (site.Built.LastNode is YamlList or YamlMap && site.IsBlankBetween(site.Built.LastEnd, site.From) && !site.IsFirstInLine(site.From))
            return TextBehindBracket(site, site.Built.LastNode);
        if (site.Says("invalid mapping") || site.Says("Mapping values")) return Colon(site);
        if (site.IsFirstInLine(site.From)) return WrongLine(site);
        return site.Says("expected ':'")
            ? new Diagnostic(YamlCodes.EntryExpected, site.PlaceOfLetter(site.From), "a colon is expected behind this key", YamlCodes.EntryExpected.Cure)
            : null;
    }

    private static Diagnostic TooMany(FaultSite site) => new(
        YamlCodes.Brackets,
        site.PlaceOfLetter(site.From),
        $"nothing is open that {Shown.Quoted(site.Letter.ToString())} could close",
        "delete it, or put the text in quotes");

    private static Diagnostic TextBehindBracket(FaultSite site, YamlNode bracketed) => site.IsSameLine(bracketed.Start, site.From)
        ? site.WantsQuotes(
            YamlCodes.BracketInText,
            bracketed.Start,
            $"a text that begins with {Shown.Quoted(site.At(bracketed.Start).ToString())} needs quotes, else it is {bracketed.Kind} with something behind it",
            bracketed.Start)
        : new Diagnostic(YamlCodes.EntryExpected, site.PlaceOfLetter(site.From), $"{bracketed.Kind} ends before this", "begin a new line for the next entry");

    private static Diagnostic Colon(FaultSite site)
    {
        if (site.IsSameLine(site.Pending, site.From))
            return site.WantsQuotes(YamlCodes.ColonInText, site.From, "within a text without quotes a colon and a blank make a key of what stands before", site.Pending);

        var line = site.Source.LineOf(site.From);
        if (GluedLine(site, site.Source.LineOf(site.Pending)) is { } glued) return glued;
        return new Diagnostic(
            YamlCodes.Indentation,
            site.Source.PlaceOf(FirstInLine(site, line), site.From),
            $"this line begins deeper than the entry above it, so it continues the text of line {site.Source.LineOf(site.Pending)}",
            "let the keys of one map begin in one column");
    }

    private static Diagnostic? GluedLine(FaultSite site, int line)
    {
        var colon = LineShape.GluedColon(site.Source.Line(line));
        if (colon < 0) return null;
        var at = site.Source.StartOfLine(line) + colon;
        return new Diagnostic(
            YamlCodes.NoBlankAfterColon,
            site.PlaceOfLetter(at),
            "no blank follows this colon, so the line is a text and no key",
            Quoting.ColonHint(site.Source, at));
    }

    private static Diagnostic? WrongLine(FaultSite site)
    {
        if (GluedLine(site, site.Source.LineOf(site.From)) is { } glued) return glued;

        var column = site.Source.ColumnOf(site.From);
        var columns = ColumnsAbove(site);
        if (columns.Count == 0) return null;
        if (!columns.Contains(column))
        {
            return new Diagnostic(
                YamlCodes.Indentation,
                site.PlaceOfLetter(site.From),
                $"this line begins in column {column}, the entries above it in column {string.Join(" or ", columns)}",
                YamlCodes.Indentation.Cure);
        }

        var isListEntry = site.Letter == '-' && site.At(site.From + 1) is ' ' or '\r' or '\n' or '\0';
        return new Diagnostic(
            YamlCodes.EntryExpected,
            site.PlaceOfLetter(site.From),
            isListEntry ? "a list entry stands here among the keys of a map" : "an entry of the list or map above is expected here",
            YamlCodes.EntryExpected.Cure);
    }

    private static List<int> ColumnsAbove(FaultSite site)
    {
        var columns = site.Built.Open.Where(open => !open.IsFlow).Select(open => site.Source.ColumnOf(open.Start)).ToList();
        if (site.Built.LastNode is YamlList or YamlMap) columns.Add(site.Source.ColumnOf(site.Built.LastNode.Start));
        return [.. columns.Distinct().Order()];
    }

    private static int FirstInLine(FaultSite site, int line)
    {
        var start = site.Source.StartOfLine(line);
        while (site.At(start) is ' ' or '\t') start++;
        return Math.Min(start, site.From);
    }
}
