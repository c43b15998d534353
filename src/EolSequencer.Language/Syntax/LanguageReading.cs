using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Yaml;

namespace EolSequencer.Language.Syntax;

/// <summary>Texts for people: one text, or <c>{ en: …, es: … }</c>.</summary>
internal static class LanguageReading
{
    public static LanguageTexts? AsTexts(this YamlNode node, string what, Report report)
    {
        if (node is not YamlMap map)
        {
            if (node is YamlList)
            {
                NodeReading.ReportKind(node, what, "a text", report, "write one text, or  { en: …, es: … }");
                return null;
            }

            return node.AsText(what, report) is { } plain ? new LanguageTexts([("", plain)]) : null;
        }

        var versions = new List<(string Language, YamlScalar Text)>();
        foreach (var entry in map.Entries)
        {
            var isLanguage = IsLanguage(entry.Key.Text);
            if (!isLanguage) report.Add(SyntaxCodes.NoLanguage, entry.Key.Place, $"{Shown.Quoted(entry.Key.Text)} is no code of a language");
            if (entry.Value.AsText($"the text of '{entry.Key.Text}'", report) is { } text && isLanguage) versions.Add((entry.Key.Text, text));
        }

        if (map.Entries.Count == 0) report.Add(SyntaxCodes.EmptyText, map.Place, $"{what} has no text in any language");
        return versions.Count > 0 ? new LanguageTexts(versions) : null;
    }

    /// <summary>Whether a text is formed like a code of ISO 639-1.</summary>
    public static bool IsLanguage(string key) => key is [>= 'a' and <= 'z', >= 'a' and <= 'z'];
}
