using System.Collections.Immutable;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;

namespace EolSequencer.Language.Binding.Plants;

/// <summary>The languages of a plant, and whether its texts have them.</summary>
internal static class LanguageCheck
{
    /// <summary>What a code of a language looks like.</summary>
    public static ValueForm Form { get; } = new ValueForm.Text("^[a-z]{2}$", Subject.None);

    /// <summary>The languages a plant names.</summary>
    public static ImmutableArray<string> Read(MapReader plant)
    {
        var languages = ImmutableArray.CreateBuilder<string>();
        foreach (var item in plant.List("languages"))
        {
            if (item.AsText("a language", plant.Report) is not { } text) continue;
            if (!LanguageReading.IsLanguage(text.Text)) plant.Report.Add(SyntaxCodes.NoLanguage, text.Place, $"{Shown.Quoted(text.Text)} is no code of a language");
            else if (!languages.Contains(text.Text)) languages.Add(text.Text);
        }

        return languages.ToImmutable();
    }

    /// <summary>Reports the languages that a text lacks. A text of no particular language serves everybody.</summary>
    public static void Run(LanguageTexts texts, ImmutableArray<string> languages, Report report)
    {
        if (texts.Versions[0].Language.Length == 0) return;
        foreach (var language in languages)
        {
            if (texts.Versions.Any(version => version.Language == language)) continue;
            report.Add(AdviceCodes.LanguageMissing, texts.Versions[0].Text.Place, $"the text has no '{language}', whoever reads that language sees '{texts.Versions[0].Language}'");
        }
    }
}
