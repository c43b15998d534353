using System.Collections.Immutable;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Binding.Reach;

/// <summary>A sequence unrolled for all possible vehicles at once, so that checks are plain loops over what can run.</summary>
internal sealed class NodeInstances
{
    /// <summary>The most steps and groups a sequence may unroll to.</summary>
    public const int Most = 20_000;

    private readonly PossibleVehicles _vehicles;
    private readonly ImmutableArray<NodeInstance>.Builder _found = ImmutableArray.CreateBuilder<NodeInstance>();

    private NodeInstances(PossibleVehicles vehicles) => _vehicles = vehicles;

    /// <summary>The vehicles it was unrolled for.</summary>
    public PossibleVehicles Vehicles => _vehicles;

    /// <summary>Every instance in the order in which it runs.</summary>
    public ImmutableArray<NodeInstance> All { get; private set; } = [];

    /// <summary>The same as it lies in each other.</summary>
    public ImmutableArray<Unrolled> Tree { get; private set; } = [];

    /// <summary>The unrolled sequence; null when there are more than <see cref="Most"/> instances.</summary>
    public static NodeInstances? Of(CheckedSequence sequence, PossibleVehicles vehicles)
    {
        var walk = new NodeInstances(vehicles);
        var arguments = sequence.Parameters.Aggregate(Arguments.None, (sum, parameter) => sum.With(parameter.Name, parameter.Default));
        walk.Tree = walk.Walk([.. sequence.Prepare, .. sequence.Steps, .. sequence.Always, .. sequence.AfterVerdict], new Around("", arguments, vehicles.All));
        if (walk._found.Count > Most) return null;
        walk.All = walk._found.ToImmutable();
        return walk;
    }

    private sealed record Around(string Id, Arguments Arguments, Reached Reached)
    {
        public string Inner(string own) => Id.Length == 0 ? own : $"{Id}.{own}";
    }

    private ImmutableArray<Unrolled> Walk(ImmutableArray<Node> nodes, Around around)
    {
        var items = ImmutableArray.CreateBuilder<Unrolled>(nodes.Length);
        foreach (var node in nodes)
        {
            if (_found.Count > Most) break;
            var inside = around with { Reached = around.Reached.And(_vehicles.Where(node.When, around.Arguments)) };
            switch (node)
            {
                case Step: items.Add(new Unrolled.Single(Add(node, inside with { Id = around.Inner(node.Id) }, around, inside))); break;
                case Group group: AddGroup(group, inside with { Id = around.Inner(node.Id) }, around, items); break;
                case Together together: items.Add(Lanes(together, inside, around)); break;
            }
        }

        return items.ToImmutable();
    }

    private NodeInstance Add(Node node, Around at, Around before, Around applies)
    {
        var instance = new NodeInstance(node, at.Id, at.Arguments, before.Reached, applies.Reached, at.Reached);
        _found.Add(instance);
        return instance;
    }

    private Unrolled.Lanes Lanes(Together together, Around inside, Around before)
    {
        var instance = Add(together, inside, before, inside);
        return new Unrolled.Lanes(instance, [.. together.Branches.Select(branch => Walk(branch.Children, inside))]);
    }

    private void AddGroup(Group group, Around applies, Around before, ImmutableArray<Unrolled>.Builder items)
    {
        IEnumerable<(Around Inside, ImmutableArray<string> Values)> loops = [(applies, [])];
        foreach (var loop in group.Each) loops = loops.SelectMany(outer => Turns(loop, outer.Inside).Select(turn => (turn.Inside, outer.Values.Add(turn.Value))));

        var all = loops.Take(Most).Select(loop => loop.Inside with
        {
            Arguments = ArgumentsOf(group, loop.Inside.Arguments),
            Id = loop.Values.IsEmpty ? applies.Id : $"{applies.Id}[{string.Join(',', loop.Values)}]",
        });
        if (group is { AnyOrder: true, Each.IsEmpty: false }) items.Add(BesideEachOther(group, [.. all], applies, before));
        else items.AddRange(all.Select(turn => Turn(group, turn, applies, before)));
    }

    private Unrolled.Series Turn(Group group, Around at, Around applies, Around before)
    {
        var instance = Add(group, at, before, applies);
        var children = Walk(group.Children, at);
        var always = Walk(group.Always, at);
        return new Unrolled.Series(instance, group.AnyOrder
            ? [new Unrolled.Lanes(null, [.. children.Select(child => ImmutableArray.Create(child))]), .. always]
            : [.. children, .. always]);
    }

    /// <summary>The turns of an any-order group are its lanes: its caution and its <c>always</c> are those of all of them, and the first turn that a vehicle has stands for them.</summary>
    private Unrolled.Series BesideEachOther(Group group, ImmutableArray<Around> turns, Around applies, Around before)
    {
        var lanes = ImmutableArray.CreateBuilder<ImmutableArray<Unrolled>>(turns.Length);
        var always = ImmutableArray.CreateBuilder<Unrolled>();
        var earlier = _vehicles.All.Without(_vehicles.All);
        foreach (var turn in turns)
        {
            Add(group, turn, before, applies);
            lanes.Add(Walk(group.Children, turn));
            always.AddRange(Walk(group.Always, turn with { Reached = turn.Reached.Without(earlier) }));
            earlier = earlier.Or(turn.Reached);
        }

        var whole = new NodeInstance(group, applies.Id, applies.Arguments, before.Reached, applies.Reached, earlier);
        return new Unrolled.Series(whole, [new Unrolled.Lanes(null, lanes.ToImmutable()), .. always]);
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
