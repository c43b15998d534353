using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>A step or group with one set of loop values.</summary>
/// <param name="Id">Full id with loop values.</param>
/// <param name="Pattern">The id without them.</param>
internal sealed record StepPath(Node Node, string Id, string Pattern)
{
    /// <summary>Every step and group of a sequence, whichever vehicle it is, in written order.</summary>
    public static IEnumerable<StepPath> In(CheckedSequence sequence) =>
        In([.. sequence.Prepare, .. sequence.Steps, .. sequence.Always, .. sequence.AfterVerdict]);

    /// <summary>The same of some nodes that lie in no group.</summary>
    public static IEnumerable<StepPath> In(IEnumerable<Node> nodes) => In(nodes, "", "");

    private static IEnumerable<StepPath> In(IEnumerable<Node> nodes, string id, string pattern) => nodes.SelectMany(node => Of(node, id, pattern));

    private static IEnumerable<StepPath> Of(Node node, string id, string pattern) => node switch
    {
        Together together => together.Branches.SelectMany(branch => In(branch.Children, id, pattern)),
        Group group => Turns(group, Inner(id, node.Id), Inner(pattern, node.Id)),
        _ => [new StepPath(node, Inner(id, node.Id), Inner(pattern, node.Id))],
    };

    private static IEnumerable<StepPath> Turns(Group group, string id, string pattern) =>
        Values(group).Select(value => value.Length == 0 ? id : $"{id}[{value}]")
            .SelectMany(one => In([.. group.Children, .. group.Always], one, pattern).Prepend(new StepPath(group, one, pattern)));

    private static IEnumerable<string> Values(Group group) => group.Each.Aggregate(
        Enumerable.Repeat("", 1),
        (outer, loop) => outer.SelectMany(before => loop.Values.Select(value => before.Length == 0 ? value.Value : $"{before},{value.Value}")));

    private static string Inner(string outer, string own) => outer.Length == 0 ? own : $"{outer}.{own}";
}
