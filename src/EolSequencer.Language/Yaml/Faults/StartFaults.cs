using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Yaml.Faults;

/// <summary>Values that begin with a character YAML keeps for itself.</summary>
internal static class StartFaults
{
    public static Diagnostic? Explain(FaultSite site)
    {
        if (site.Says("directive"))
        {
            return new Diagnostic(
                YamlCodes.Directive, site.PlaceOfLetter(site.From), "a line that begins with % is a directive, which is not supported", YamlCodes.Directive.Cure);
        }

        if (site.Says("a tag") || site.Says("end of tag") || site.Says("tag handle")) return Reserved(site, TagStart(site), YamlCodes.Tag);
        if (site.Says("anchor") || site.Says("Anchor")) return Reserved(site, site.From, site.Letter == '*' ? YamlCodes.Alias : YamlCodes.Anchor);
        if (site.Says("cannot start any token") || site.Says("block scalar")) return Reserved(site, site.From, YamlCodes.ReservedStart);

        var isValue = site.IsBehindColon && site.Pending == site.From;
        return isValue && site.Letter is '-' or '?' or ',' or ']' or '}' ? Reserved(site, site.From, YamlCodes.ReservedStart) : null;
    }

    // The library points behind the tag.
    private static int TagStart(FaultSite site)
    {
        var lineStart = site.Source.StartOfLine(site.Source.LineOf(site.From));
        var mark = site.Source.Text.LastIndexOf('!', Math.Min(site.From, site.Source.Text.Length - 1), site.From - lineStart);
        return mark < 0 ? site.From : mark;
    }

    private static Diagnostic Reserved(FaultSite site, int at, DiagnosticCode code) => site.At(at) is '\0' or '\r' or '\n'
        ? new Diagnostic(code, site.PlaceOfLetter(at), "reading stopped here", code.Cure)
        : site.WantsQuotes(code, at, $"a value cannot begin with {Shown.Quoted(site.At(at).ToString())} unless it is in quotes", at);
}
