using System.Collections.Immutable;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Source;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Binds steps, groups and branches one after the other.</summary>
internal static class NodeListBinder
{
    // A step is told from a group as Bind tells them.
    private static readonly ValueForm Node = new ValueForm.Cases("a step, a group or branches",
    [
        ("together", new ValueForm.Described(() => Forms.Map(TogetherBinder.Shape))),
        ("step", StepShapes.Form),
        ("group", new ValueForm.Described(() => Forms.Map(GroupBinder.Shape))),
    ]);

    /// <summary>What a list of steps looks like.</summary>
    public static ValueForm Form { get; } = Forms.List(Node);

    /// <summary>What a list of steps looks like where there must be some.</summary>
    public static ValueForm Filled { get; } = Forms.List(Node, 1);

    /// <summary>The nodes of a list, those with a fault left out.</summary>
    /// <param name="siblings">The ids taken at this level, each with its place; branches share those of the level they stand in.</param>
    public static BoundNodes Bind(IReadOnlyList<YamlNode> items, Scope scope, Dictionary<string, SourcePlace> siblings)
    {
        var nodes = ImmutableArray.CreateBuilder<Node>(items.Count);
        foreach (var item in items)
        {
            if (item.AsMap("a step", scope.Report) is not { } map || Bind(map, scope, siblings) is not { } bound) continue;
            nodes.Add(bound.Node);
            scope = scope with { Results = bound.Results };
        }

        return new BoundNodes(nodes.ToImmutable(), scope.Results);
    }

    /// <summary>The nodes of an any-order group, of which none sees the results of another.</summary>
    public static BoundNodes BindSideBySide(IReadOnlyList<YamlNode> items, Scope scope, Dictionary<string, SourcePlace> siblings)
    {
        var lanes = items.Select(item => Bind([item], scope, siblings)).ToList();
        return new BoundNodes([.. lanes.SelectMany(lane => lane.Nodes)], scope.Results.Join(lanes.Select(lane => lane.Results)));
    }

    private static BoundNode? Bind(YamlMap map, Scope scope, Dictionary<string, SourcePlace> siblings)
    {
        if (map.Find("together") is not null) return TogetherBinder.Bind(map, scope, siblings);
        var id = map.Find("step") ?? map.Find("group");
        if (id is null)
        {
            var meant = map.Entries.Select(entry => Nearest.Of(entry.Key.Text, ["step", "group", "together"])).FirstOrDefault(word => word is not null);
            var place = map.Entries is [var first, ..] ? first.Key.Place : map.Place;
            scope.Report.Add(SequenceCodes.NoNode, place, "this is neither a step nor a group nor together", meant is null ? null : $"did you mean '{meant}'?");
            return null;
        }

        if (!IsFree(id.Value, siblings, scope.Report)) return null;
        return id.Key.Text == "step" ? StepBinder.Bind(map, scope) : GroupBinder.Bind(map, scope);
    }

    private static bool IsFree(YamlNode id, Dictionary<string, SourcePlace> siblings, Report report)
    {
        if (id is not YamlScalar text || siblings.TryAdd(text.Text, text.Place)) return true;
        report.Add(NameCodes.Twice, text.Place, $"'{text.Text}' already stands at {siblings[text.Text]}");
        return false;
    }
}
