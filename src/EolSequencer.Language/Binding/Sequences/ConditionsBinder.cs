using System.Collections.Immutable;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expectations;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Reads what is recorded with every run: names, each with a channel.</summary>
internal static class ConditionsBinder
{
    /// <summary>The key.</summary>
    public static MapKey Key { get; } = new(
        "conditions", Forms.Names(Ids.NameForm, Forms.Named(Subject.Channel)), "what is recorded with every run beside its steps, read once behind 'prepare'; it judges nothing");

    public static ImmutableArray<RunCondition> Bind(YamlMap? map, Scope scope)
    {
        var conditions = ImmutableArray.CreateBuilder<RunCondition>();
        foreach (var (key, value) in map?.Entries ?? [])
        {
            var name = Ids.Name(key, "a condition", scope.Report);
            if (value.AsText($"the condition '{key.Text}'", scope.Report) is not { } text || ChannelReference.Channel(ScalarPart.Whole(text), scope) is not { } found) continue;
            if (found.Channel.IsEvent) scope.Report.Add(SequenceCodes.ConditionOfEvent, text.Place, $"'{found.Use}' gives results that arrive once");
            else if (name is not null) conditions.Add(new RunCondition(name, found.Use, found.Channel));
        }

        return conditions.ToImmutable();
    }
}
