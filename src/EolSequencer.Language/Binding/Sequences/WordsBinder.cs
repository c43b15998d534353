using System.Collections.Immutable;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Reads how values of loop names and parameters read on a screen.</summary>
internal static class WordsBinder
{
    /// <summary>The key that holds them.</summary>
    public static MapKey Key { get; } = new("words", Forms.Names(Forms.Text, Forms.Names(Forms.Text, Forms.Texts)), "how loop names and parameters read in prompts: name, value, text");

    public static ImmutableArray<Words> Bind(YamlMap? map, Report report)
    {
        var words = ImmutableArray.CreateBuilder<Words>();
        foreach (var (name, values) in map?.Entries ?? [])
        {
            foreach (var (value, text) in values.AsMap($"the words of '{name.Text}'", report)?.Entries ?? [])
            {
                if (text.AsTexts($"the words of '{value.Text}'", report) is { } texts) words.Add(new Words(name.Text, value.Text, texts.ToLocalText()));
            }
        }

        return words.ToImmutable();
    }
}
