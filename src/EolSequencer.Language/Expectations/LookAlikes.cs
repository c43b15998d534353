using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Expectations;

/// <summary>Signs that authors write where the language has words or dots, or that only look like its own.</summary>
internal static class LookAlikes
{
    /// <summary>Each sign with its name and what takes its place; longer signs first.</summary>
    private static readonly (string Sign, string Name, string Replacement)[] InWindows =
    [
        ("…", "U+2026, the ellipsis", ".."),
        ("‥", "U+2025, the two dot leader", ".."),
        ("—", "U+2014, the long dash", ".."),
        ("–", "U+2013, the dash", ".."),
        ("÷", "U+00F7, the division sign", ".."),
        ("~", "a tilde", ".."),
        (" to ", "the word to", " .. "),
        (" - ", "a hyphen between two numbers", " .. "),
        ("+-", "+- without a stroke", "+/-"),
        ("∓", "U+2213, minus or plus", "±"),
    ];

    /// <summary>Signs in front of a number that the language says in words.</summary>
    private static readonly (string Sign, string Words)[] InFront =
    [
        ("<=", "at most "), ("≤", "at most "), (">=", "at least "), ("≥", "at least "),
        ("<", "at most "), (">", "at least "), ("==", "equals "), ("=", "equals "), ("max ", "at most "), ("min ", "at least "),
    ];

    /// <summary>Reports the first sign of a text that is no form of an expectation; false when there is none.</summary>
    public static bool Report(ScalarPart part, Report report)
    {
        foreach (var (sign, words) in InFront)
        {
            if (!part.Span.StartsWith(sign)) continue;
            report.Add(
                ExpectationCodes.UnknownForm, part.From(0, sign.Length).Place, $"{Shown.Quoted(sign.Trim())} stands in front of a number",
                $"write  {words}{part.From(sign.Length).Trim().Text}");
            return true;
        }

        if (!part.Span.ContainsAnyInRange('0', '9')) return false;
        foreach (var (sign, name, replacement) in InWindows)
        {
            if (WindowText.Find(part.Span, sign) is not (var at and >= 0)) continue;

            // A dash in front of a digit is meant as a minus: –5 .. 5 V.
            var isMinus = sign is "–" or "—" && (at == 0 || part.Span[..at].TrimEnd().EndsWith(".."));
            report.Add(
                ExpectationCodes.LookAlike, part.From(at, sign.Length).Place, $"{name} stands here",
                $"write  {part.With(at, sign.Length, isMinus ? "-" : replacement)}");
            return true;
        }

        return false;
    }
}
