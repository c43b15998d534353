using System.Globalization;
using EolSequencer.Language.Syntax;

namespace EolSequencer.Language.Editing;

/// <summary>Says in words what may stand behind a key.</summary>
internal static class FormTexts
{
    public static IReadOnlyList<string> Of(ValueForm form) => [.. form.Alternatives().Select(Word).Where(word => word.Length > 0).Distinct()];

    private static string Word(ValueForm form) => form switch
    {
        ValueForm.Texts => "a text, or one for each language: { en: …, es: … }",
        ValueForm.YesNo => "yes or no",
        ValueForm.Whole whole => string.Create(CultureInfo.InvariantCulture, $"a whole number, {whole.Least} to {whole.Most}"),
        ValueForm.Duration => "a time with its unit: 500 ms, 5 s, 2 min",
        ValueForm.Word words => string.Join(", ", words.All),
        ValueForm.List => "a list",
        ValueForm.Map map => $"a map: {string.Join(", ", map.Shape.Keys)}",
        ValueForm.Names => "a map of names",
        ValueForm.Text { About: Subject.Expression } => "C#",
        ValueForm.Text { About: Subject.Expectation } => "a .. b unit, x ± y unit, at least, at most, equals, one of, only, empty, matches, yes, no, limits.NAME",
        ValueForm.Text { About: Subject.Channel } => "ROLE.CHANNEL",
        ValueForm.Text { About: Subject.Action } => "ROLE.ACTION",
        _ => "",
    };
}
