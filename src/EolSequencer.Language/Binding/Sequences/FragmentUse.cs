using EolSequencer.Language.Plants;
using EolSequencer.Language.Syntax;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Source;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Binds the steps of a fragment where a group uses it.</summary>
internal static class FragmentUse
{
    /// <summary>The group with the fragment's steps; null: already reported.</summary>
    /// <param name="around">The place inside the group; the fragment sees nothing of its names.</param>
    public static BoundNode? Bind(MapReader keys, Group group, Scope around)
    {
        if (keys.Text("use") is not { } use || around.Context.Folder.Find(FileKind.Fragment, use.Text, use.Place) is not { } file) return null;
        around.Context.Use(file);
        if (around.Fragments.Contains(file.Id))
        {
            var chain = string.Join(" → ", around.Fragments.SkipWhile(id => id != file.Id).Append(file.Id));
            around.Report.Add(SequenceCodes.Recursion, use.Place, $"the fragment uses itself: {chain}");
            return null;
        }

        if (file.Root is null || FragmentFile.Open(file.Root, around.Report) is not { } fragment) return null;
        var arguments = FragmentArguments.Bind(keys, use, fragment.Parameters, around);
        if (!fragment.FindsDevices(around.Context, use.Place)) return null;
        var inside = fragment.Inside(around with
        {
            Fragments = around.Fragments.Add(file.Id),
            Results = around.Results.Enter(group.Id, group.Each, isFragment: true, group.Capture),
        });
        var siblings = new Dictionary<string, SourcePlace>(StringComparer.Ordinal);
        var items = fragment.Keys.List("steps");
        var isSideBySide = group is { AnyOrder: true, Each.IsEmpty: true };
        var steps = isSideBySide ? NodeListBinder.BindSideBySide(items, inside, siblings) : NodeListBinder.Bind(items, inside, siblings);
        var outside = around with { Arguments = ArgumentNames.None(around.Context.Vehicle.Type), Results = around.Results.Enter(group.Id, group.Each, isFragment: true, group.Capture) };
        var always = NodeListBinder.Bind(keys.List("always"), outside, new Dictionary<string, SourcePlace>(siblings, StringComparer.Ordinal));
        WordsCheck.Run(fragment.Keys.FreeMap("words"), fragment.Parameters, steps.Nodes, around.Context);
        return new BoundNode(
            group with
            {
                Title = group.Title ?? fragment.Title,
                Children = steps.Nodes,
                Always = always.Nodes,
                Fragment = file.Id,
                Arguments = arguments,
                Words = fragment.Words,
            },
            steps.Results.Leave(group.OnlyIf is not null));
    }
}
