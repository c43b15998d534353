using System.Collections.Immutable;
using System.Globalization;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Source;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Binds a group: steps of its own or those of a fragment, once or in loops.</summary>
internal static class GroupBinder
{
    private static readonly Words<bool> Resume = new(("repeat", true));
    private static readonly string[] Contents = ["steps", "use"];

    /// <summary>The keys of a group.</summary>
    public static MapShape Shape { get; } = new(
        "a group",
        [new("group", Ids.NameForm, "id, unique among its siblings")],
        [
            new("steps", NodeListBinder.Filled, "what it holds"),
            new("use", Forms.Named(Subject.Fragment), "the fragment whose steps it holds"),
            new("with", Forms.Names(Forms.Text, Forms.Value), "values for the parameters of the fragment"),
            EachBinder.Key,
            new("any-order", Forms.YesNo, "all prompts on one screen; they end in whatever order"),
            DefaultsBinder.Key,
            new("resume", Forms.Word(Resume), "repeat: after an interruption it begins again"),
            new("capture", CaptureBinder.Form, "channels that are kept as a trace while it runs"),
            new("always", NodeListBinder.Form, "run after its steps, whatever happened in it"),
            .. NodeRules.Keys,
        ],
        Contents);

    /// <summary>The group; null: already reported.</summary>
    public static BoundNode? Bind(YamlMap map, Scope scope)
    {
        if (MapReader.Open(map, Shape, scope.Report) is not { } keys || keys.Find("group") is not { } idNode) return null;
        var id = Ids.Name(idNode, "a group", scope.Report);
        if (keys.ExactlyOne(Contents, "content") is not { } content || id is null) return null;
        if (scope.Depth >= Scope.MostDepth)
        {
            scope.Report.Add(SequenceCodes.TooDeep, idNode.Place, $"'{id}' lies in {Scope.MostDepth.ToString(CultureInfo.InvariantCulture)} groups already");
            return null;
        }

        if (content == "steps" && keys.Has("with")) scope.Report.Add(SequenceCodes.WithWithoutUse, keys.PlaceOf("with"), "'with' gives values to a fragment, and none is used");
        var loops = EachBinder.Bind(keys, scope);
        var around = DefaultsBinder.Inside(keys, scope) with
        {
            Arguments = EachBinder.Inside(loops, scope.Arguments),
            Depth = scope.Depth + 1,
            IsCautioned = scope.IsCautioned || NodeRules.SaysCaution(keys),
        };
        var anyOrder = keys.YesNo("any-order") ?? false;
        var own = Own(content, anyOrder, loops, scope, around);
        var group = NodeRules.Read(keys, new Group { Id = id, Place = idNode.Place, Children = [] }, own) with
        {
            When = Conditions.Add(keys, "when", scope.Static, scope.Context.Batch),
            Each = loops,
            AnyOrder = anyOrder,
            RepeatOnResume = keys.Word("resume", Resume) ?? false,
            Capture = CaptureBinder.Bind(keys, own),
        };
        if (group is { Capture: not null, AnyOrder: true, Each.IsEmpty: false })
        {
            scope.Report.Add(SequenceCodes.CaptureOfLanes, keys.PlaceOf("capture"), $"the values of '{id}' run side by side, and a capture belongs to one of them at a time");
        }

        return content == "use" ? FragmentUse.Bind(keys, group, around) : Steps(keys, group, around);
    }

    /// <summary>
    /// What the group's own conditions may name. They are decided where the group runs: with its loop names, but side by
    /// side lanes share one, and a fragment knows nothing of the names around it.
    /// </summary>
    private static Scope Own(string content, bool anyOrder, ImmutableArray<LoopName> loops, Scope scope, Scope inside)
    {
        if (content == "use") return scope with { Arguments = ArgumentNames.None(scope.Context.Vehicle.Type) };
        return anyOrder && !loops.IsEmpty ? scope : scope with { Arguments = inside.Arguments };
    }

    private static BoundNode Steps(MapReader keys, Group group, Scope around)
    {
        var inside = around with { Results = around.Results.Enter(group.Id, group.Each, isFragment: false, group.Capture) };
        var siblings = new Dictionary<string, SourcePlace>(StringComparer.Ordinal);
        var isSideBySide = group is { AnyOrder: true, Each.IsEmpty: true };
        var steps = isSideBySide ? NodeListBinder.BindSideBySide(keys.List("steps"), inside, siblings) : NodeListBinder.Bind(keys.List("steps"), inside, siblings);
        var always = NodeListBinder.Bind(keys.List("always"), inside, siblings);
        if (steps.Nodes.IsEmpty && keys.Find("steps") is YamlList { Items.Count: 0 } list) around.Report.Add(SequenceCodes.Empty, list.Place, $"'{group.Id}' holds no steps");
        return new BoundNode(group with { Children = steps.Nodes, Always = always.Nodes }, steps.Results.Leave(group.OnlyIf is not null));
    }
}
