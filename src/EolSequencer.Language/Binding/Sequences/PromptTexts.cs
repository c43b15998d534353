using EolSequencer.Language.Binding.Plants;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;
using EolSequencer.Model.Texts;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Reads texts for the operator and checks the names in their braces.</summary>
internal static class PromptTexts
{
    /// <summary>The text behind a key; null: absent, or already reported.</summary>
    public static LocalText? Read(MapReader keys, string key, Scope scope)
    {
        if (keys.Texts(key) is not { } texts) return null;
        LanguageCheck.Run(texts, scope.Context.Plant.Languages, scope.Report);
        foreach (var (_, text) in texts.Versions)
        {
            for (var open = text.Text.IndexOf('{'); open >= 0; open = text.Text.IndexOf('{', open + 1))
            {
                var close = text.Text.IndexOf('}', open);
                var name = close < 0 ? "" : text.Text[(open + 1)..close];
                if (close > 0 && scope.Arguments.Shapes.ContainsKey(name)) continue;

                var near = Nearest.Of(name, scope.Arguments.Shapes.Keys);
                scope.Report.Add(
                    SequenceCodes.UnknownNameInText,
                    text.PlaceOf(open, (close < 0 ? text.Text.Length : close + 1) - open),
                    close < 0 ? "this brace is not closed" : $"no loop name or parameter is called {Shown.Quoted(name)} here",
                    near is null ? null : $"did you mean '{{{near}}}'?");
            }
        }

        return texts.ToLocalText();
    }
}
