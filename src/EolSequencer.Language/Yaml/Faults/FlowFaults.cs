using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Yaml.Faults;

/// <summary>Faults within { } or [ ].</summary>
internal static class FlowFaults
{
    public static Diagnostic? Explain(FaultSite site)
    {
        if (CutByHash(site) is { } cut) return cut;

        var isInText = site.Pending < site.From && site.IsSameLine(site.Pending, site.From);
        if (isInText && site.Letter is '[' or '{')
        {
            return site.WantsQuotes(
                YamlCodes.BracketInText, site.From, $"within {{ }} and [ ] a text without quotes cannot contain {Shown.Quoted(site.Letter.ToString())}", site.Pending);
        }

        if (isInText && site.Letter == ':')
            return site.WantsQuotes(YamlCodes.ColonInText, site.From, "within a text without quotes a colon and a blank make a key of what stands before", site.Pending);
        if (site.Letter == ',' && site.Says("node content"))
            return new Diagnostic(YamlCodes.EntryExpected, site.PlaceOfLetter(site.From), "nothing stands in front of this comma", "delete it, or write what is missing");
        return Brackets(site);
    }

    private static Diagnostic? CutByHash(FaultSite site)
    {
        var letters = site.Source.Text;
        var lineEnd = site.Source.EndOfLine(site.Source.LineOf(Math.Min(site.Pending, letters.Length)));
        for (var at = site.Pending + 1; at + 1 < lineEnd; at++)
        {
            if (letters[at] != '#' || letters[at - 1] is not (' ' or '\t')) continue;
            if (letters[at + 1] is ' ' or '\t' or '#' or '-' or '=') return null;
            return site.WantsQuotes(YamlCodes.CutByHash, at, "YAML takes the rest of this line for a comment", TextStart(site, at));
        }

        return null;
    }

    // Several texts may lie between what was understood and the "#": the last one is cut.
    private static int TextStart(FaultSite site, int hash)
    {
        var start = site.Pending;
        for (var end = start; (end = TextExtent.EndOf(site.Source, start, inFlow: true)) < hash;)
        {
            start = end + 1;
            while (start < hash && site.At(start) is ' ' or ',' or '\t' or ']' or '}') start++;
        }

        return Math.Min(start, hash);
    }

    private static Diagnostic Brackets(FaultSite site)
    {
        var (opening, closing) = site.At(site.Bracket) == '[' ? ("'['", ']') : ("'{'", '}');
        var hint = $"close it with  {closing}";
        if (site.Letter is ']' or '}' && site.Letter != closing)
        {
            var meets = $"'{site.Letter}' in line {site.Source.LineOf(site.From)}, column {site.Source.ColumnOf(site.From)}";
            return new Diagnostic(YamlCodes.Brackets, site.PlaceOfLetter(site.Bracket), $"the {opening} that opens here meets {meets}", hint);
        }

        if (!IsClosedSomewhere(site, closing))
        {
            return new Diagnostic(
                YamlCodes.Brackets,
                site.PlaceOfLetter(site.Bracket),
                $"the {opening} that opens here is never closed; reading gave up in line {site.GaveUpLine}",
                hint);
        }

        return new Diagnostic(
            YamlCodes.EntryExpected,
            site.PlaceOfLetter(site.From),
            $"a comma or '{closing}' is expected here",
            "separate the entries with commas; put a text in quotes when it has : # , [ ] { } in it");
    }

    private static bool IsClosedSomewhere(FaultSite site, char closing)
    {
        var depth = 0;
        var letters = site.Source.Text;
        for (var at = site.Bracket; at < letters.Length; at++)
        {
            if (letters[at] is '[' or '{') depth++;
            else if (letters[at] is ']' or '}' && --depth == 0) return letters[at] == closing;
            else if (letters[at] == '#' && at > 0 && char.IsWhiteSpace(letters[at - 1])) at = site.Source.EndOfLine(site.Source.LineOf(at)) - 1;
            else if (letters[at] == '"' && letters.IndexOf('"', at + 1) is var end and > 0) at = end;
        }

        return false;
    }
}
