using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Yaml.Faults;

/// <summary>Quotes not closed, closed too early, or with a backslash that means nothing.</summary>
internal static class QuoteFaults
{
    private static readonly string[] Operators = ["==", "!=", "&&", "||", " + ", " ? "];

    public static Diagnostic? Explain(FaultSite site)
    {
        if (site.Says("quoted scalar") && site.Letter is '"' or '\'')
        {
            return site.Says("escape") || site.Says("hexadecimal") || site.Says("Unicode")
                ? BadEscape(site)
                : NotClosed(site, site.From, site.To);
        }

        if (site.Built.LastNode is YamlScalar { IsPlain: false, Style: not (ScalarStyle.Literal or ScalarStyle.Folded) } quoted
            && quoted.End == site.Built.LastEnd
            && site.IsBlankBetween(quoted.End, site.From))
        {
            return TextBehind(site, quoted.Start, quoted.End);
        }

        // Within { } the parser stops before it hands out the text in quotes.
        if (site.At(site.Pending) is '"' or '\'' && ClosingQuote(site, site.Pending) is { } closing && site.From > closing)
            return TextBehind(site, site.Pending, closing + 1);
        return null;
    }

    private static Diagnostic NotClosed(FaultSite site, int start, int gaveUp)
    {
        var end = TextExtent.EndOf(site.Source, start + 1, site.InFlow);
        var closed = site.Source.Text[start..end] + site.Source.Text[start];
        return new Diagnostic(
            YamlCodes.UnclosedQuote,
            site.PlaceOfLetter(start),
            $"the quotes that open here are not closed; reading gave up in line {site.Source.LineOf(gaveUp)}",
            Quoting.Rewritten(site.Source, start, end, closed));
    }

    private static Diagnostic TextBehind(FaultSite site, int start, int end)
    {
        if (!site.IsSameLine(start, end)) return NotClosed(site, start, site.From);

        if (site.Letter == '#' && site.From == end)
        {
            return new Diagnostic(
                YamlCodes.TextAfterQuote, site.PlaceOfLetter(site.From), "a comment needs a blank in front of its #", Quoting.Rewritten(site.Source, end, end, " "));
        }

        var last = Math.Max(end, TextExtent.EndOf(site.Source, start, site.InFlow));
        var quoted = site.Source.Text[start..last];
        var isWhole = quoted.Length > 1 && quoted[^1] == quoted[0] && !Operators.Any(quoted.Contains);
        return new Diagnostic(
            YamlCodes.TextAfterQuote,
            site.PlaceOfLetter(site.From),
            $"the text in quotes ended with {site.Source.Text[end - 1]} in column {site.Source.ColumnOf(end - 1)}, but more text follows",
            Quoting.Rewritten(site.Source, start, last, Quoting.Quote(isWhole ? quoted[1..^1] : quoted)));
    }

    private static Diagnostic BadEscape(FaultSite site)
    {
        var letters = site.Source.Text;
        var last = Math.Min(site.To, letters.Length - 1);
        var backslash = Math.Max(site.From, letters.LastIndexOf('\\', last, last - site.From + 1));
        var end = Math.Min(backslash + 2, site.Source.EndOfLine(site.Source.LineOf(backslash)));
        var lineEnd = site.Source.EndOfLine(site.Source.LineOf(site.From));
        var closing = letters.LastIndexOf('"', lineEnd - 1, lineEnd - site.From);
        return new Diagnostic(
            YamlCodes.BadEscape,
            site.Source.PlaceOf(backslash, end),
            $"{Shown.Quoted(letters[backslash..end])} means nothing within double quotes",
            closing > site.From
                ? Quoting.Rewritten(site.Source, site.From, closing + 1, $"'{letters[(site.From + 1)..closing].Replace("'", "''")}'")
                : YamlCodes.BadEscape.Cure);
    }

    private static int? ClosingQuote(FaultSite site, int opening)
    {
        var letters = site.Source.Text;
        for (var at = opening + 1; at < letters.Length; at++)
        {
            if (letters[at] == '\\' && letters[opening] == '"') at++;
            else if (letters[at] == letters[opening] && letters[opening] == '\'' && site.At(at + 1) == '\'') at++;
            else if (letters[at] == letters[opening]) return at;
        }

        return null;
    }
}
