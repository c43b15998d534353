using System.Collections.Immutable;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Binding.Reach;

/// <summary>Unrolls a sequence for all possible vehicles at once, so that checks are plain loops over what can run.</summary>
internal sealed class NodeInstances
{
    /// <summary>The most steps and groups a sequence may unroll to.</summary>
    public const int Most = 20_000;

    private readonly PossibleVehicles _vehicles;
    private readonly ImmutableArray<NodeInstance>.Builder _found = ImmutableArray.CreateBuilder<NodeInstance>();

    private NodeInstances(PossibleVehicles vehicles) => _vehicles = vehicles;

    /// <summary>Every instance in the order in which it runs; null when there are more than <see cref="Most"/>.</summary>
    public static ImmutableArray<NodeInstance>? Of(CheckedSequence sequence, PossibleVehicles vehicles)
    {
        var walk = new NodeInstances(vehicles);
        var arguments = sequence.Parameters.Aggregate(Arguments.None, (sum, parameter) => sum.With(parameter.Name, parameter.Default));
        walk.Add([.. sequence.Prepare, .. sequence.Steps, .. sequence.Always, .. sequence.AfterVerdict], new Around("", arguments, vehicles.All));
        return walk._found.Count > Most ? null : walk._found.ToImmutable();
    }

    private sealed record Around(string Id, Arguments Arguments, Reached Reached)
    {
        public string Inner(string own) => Id.Length == 0 ? own : $"{Id}.{own}";
    }

    private void Add(ImmutableArray<Node> nodes, Around around)
    {
        foreach (var node in nodes)
        {
            if (_found.Count > Most) return;
            var id = around.Inner(node.Id);
            var inside = around with { Reached = around.Reached.And(_vehicles.Where(node.When, around.Arguments)) };
            if (node is Step) Add(node, inside with { Id = id });
            if (node is Group group) AddGroup(group, inside with { Id = id });
            if (node is Together together) AddTogether(together, inside);
        }
    }

    private void Add(Node node, Around at) =>
        _found.Add(new NodeInstance(node, at.Id, at.Arguments, at.Reached));

    private void AddTogether(Together together, Around inside)
    {
        Add(together, inside);
        foreach (var branch in together.Branches) Add(branch.Children, inside);
    }

    private void AddGroup(Group group, Around around)
    {
        IEnumerable<(Around Inside, ImmutableArray<string> Values)> loops = [(around, [])];
        foreach (var loop in group.Each) loops = loops.SelectMany(outer => Turns(loop, outer.Inside).Select(turn => (turn.Inside, outer.Values.Add(turn.Value))));

        foreach (var (turn, values) in loops.Take(Most))
        {
            var instance = turn with { Arguments = ArgumentsOf(group, turn.Arguments), Id = values.IsEmpty ? around.Id : $"{around.Id}[{string.Join(',', values)}]" };
            Add(group, instance);
            Add(group.Children, instance);
            Add(group.Always, instance);
        }
    }

    private IEnumerable<(Around Inside, string Value)> Turns(LoopName loop, Around outer) => loop.Values.Select(value => (
        outer with
        {
            Arguments = outer.Arguments.With(loop.Name, new TextValue(value.Value)),
            Reached = outer.Reached.And(_vehicles.Where(value.When, outer.Arguments)),
        },
        value.Value));

    /// <summary>A fragment sees its parameters only; what an order decides about them stays open.</summary>
    private static Arguments ArgumentsOf(Group group, Arguments outer) => group.Fragment is null
        ? outer
        : group.Arguments.Aggregate(Arguments.None, (sum, argument) => PossibleVehicles.Known(argument.Value, outer) is { } value ? sum.With(argument.Name, value) : sum);
}
