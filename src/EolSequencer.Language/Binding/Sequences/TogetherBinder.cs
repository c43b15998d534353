using System.Collections.Immutable;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Source;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Binds branches that run side by side.</summary>
internal static class TogetherBinder
{
    /// <summary>The keys of branches.</summary>
    public static MapShape Shape { get; } = new(
        "branches",
        [new("together", Forms.Names(Ids.NameForm, NodeListBinder.Form, 2), "branches that run side by side, each a list of steps")],
        [NodeRules.WhenKey, NodeRules.OnlyIfKey]);

    /// <param name="siblings">Branch names are no part of an id, so all branches share the ids of the level they stand in.</param>
    public static BoundNode? Bind(YamlMap map, Scope scope, Dictionary<string, SourcePlace> siblings)
    {
        if (MapReader.Open(map, Shape, scope.Report) is not { } keys || keys.FreeMap("together") is not { } written) return null;
        var branches = ImmutableArray.CreateBuilder<Branch>(written.Entries.Count);
        var ends = new List<ResultScope>(written.Entries.Count);
        foreach (var (key, value) in written.Entries)
        {
            var name = Ids.Name(key, "a branch", scope.Report);
            var bound = NodeListBinder.Bind(value.AsList($"the branch '{key.Text}'", scope.Report) ?? [], scope, siblings);
            ends.Add(bound.Results);
            if (name is not null) branches.Add(new Branch(name, bound.Nodes));
        }

        if (written.Entries.Count < 2) scope.Report.Add(SequenceCodes.OneBranch, keys.PlaceOf("together"), $"there is {(written.Entries.Count == 0 ? "no branch" : "one branch")} here");
        var together = new Together
        {
            Id = "",
            Place = keys.PlaceOf("together"),
            Branches = branches.ToImmutable(),
            When = Conditions.Add(keys, "when", scope.Static, scope.Context.Batch),
            OnlyIf = Conditions.Add(keys, "only-if", scope.Names, scope.Context.Batch),
        };
        return new BoundNode(together, scope.Results.Join(ends));
    }
}
