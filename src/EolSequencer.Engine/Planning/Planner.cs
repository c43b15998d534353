using System.Collections.Immutable;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Engine.Planning;

/// <summary>
/// Decides every <c>when</c> for one vehicle, unrolls the loops and picks the limits. Nothing is asked of a device, so
/// the same order always gives the same plan.
/// </summary>
public sealed class Planner
{
    private readonly Order _order;
    private readonly ImmutableArray<string> _only;
    private readonly ImmutableArray<LeftOut>.Builder _leftOut = ImmutableArray.CreateBuilder<LeftOut>();
    private readonly ImmutableArray<LeftOut>.Builder _notFitted = ImmutableArray.CreateBuilder<LeftOut>();

    /// <summary>The longest that a step of <c>always</c> may take when it does not say so itself.</summary>
    private static readonly Operand AlwaysStepWithin = new Operand.Constant(new NumberValue(5, UnitTable.Second));

    private Planner(Order order, ImmutableArray<string> only) => (_order, _only) = (order, only);

    /// <summary>The plan for one vehicle.</summary>
    /// <param name="only">Ids or id patterns of the steps and groups wanted; empty: all. Prepare and always stay whole.</param>
    public static Plan For(CheckedSequence sequence, Order order, ImmutableArray<string> only = default)
    {
        var planner = new Planner(order, only.IsDefault ? [] : only);
        var arguments = sequence.Parameters.Aggregate(Arguments.None, (sum, parameter) => sum.With(parameter.Name, parameter.Default));
        var top = new Surroundings("", "", arguments, sequence.Words, null, true);
        var prepare = planner.Walk(sequence.Prepare, top);
        var steps = planner.Walk(sequence.Steps, top with { All = planner._only.IsEmpty });
        var always = planner.Walk(sequence.Always, top with { Within = AlwaysStepWithin });
        var after = planner.Walk(sequence.AfterVerdict, top);
        return new Plan { Prepare = prepare, Steps = steps, Always = always, AfterVerdict = after, Counting = Plan.StepsOf(prepare, steps, always), LeftOut = planner._leftOut.ToImmutable(), NotFitted = planner._notFitted.ToImmutable() };
    }

    /// <param name="All">False while only some steps are wanted and none of the groups around was named.</param>
    private sealed record Surroundings(
        string Id, string Pattern, Arguments Arguments, ImmutableArray<Words> Words, string? OperatorPlace, bool All, Operand? Within = null)
    {
        public string Inner(string own) => Id.Length == 0 ? own : $"{Id}.{own}";

        public LeftOut Because(Expression when) => new("", when, Arguments);

        public string InnerPattern(string own) => Pattern.Length == 0 ? own : $"{Pattern}.{own}";
    }

    private ImmutableArray<PlannedNode> Walk(ImmutableArray<Node> nodes, Surroundings around)
    {
        var planned = ImmutableArray.CreateBuilder<PlannedNode>(nodes.Length);
        foreach (var node in nodes)
        {
            switch (node)
            {
                case Step step: AddStep(step, around, planned); break;
                case Group group: AddGroup(group, around, planned); break;
                case Together together: AddTogether(together, around, planned); break;
            }
        }

        return planned.ToImmutable();
    }

    private void AddStep(Step step, Surroundings around, ImmutableArray<PlannedNode>.Builder planned)
    {
        var id = around.Inner(step.Id);
        var pattern = around.InnerPattern(step.Id);
        if (!around.All && !Wanted(id, pattern)) return;
        if (!Applies(step.When, around.Arguments))
        {
            _leftOut.Add(new LeftOut(id, step.When!, around.Arguments));
            return;
        }

        planned.Add(new PlannedStep
        {
            Step = step.Within is null && around.Within is not null ? step with { Within = around.Within } : step,
            Id = id,
            Pattern = pattern,
            Arguments = around.Arguments,
            Words = around.Words,
            OperatorPlace = step.OperatorPlace ?? around.OperatorPlace,
            Indexes = IndexesOf(step, around.Arguments),
            Expect = Pick(step.Expect, step.Action, around.Arguments),
        });
    }

    private void AddGroup(Group group, Surroundings around, ImmutableArray<PlannedNode>.Builder planned)
    {
        if (!Applies(group.When, around.Arguments))
        {
            NoteLeftOut(group, around, around.Because(group.When!));
            return;
        }

        var instances = Instances(group, around, _notFitted).ToList();
        if (instances.Count == 0) return;
        if (group.AnyOrder)
        {
            var lanes = group.Each.IsEmpty
                ? instances.SelectMany(inside => Walk(group.Children, inside)).Select(node => ImmutableArray.Create(node))
                : instances.Select(inside => Walk(group.Children, inside));
            var always = Walk(group.Always, instances[0] with { Within = AlwaysStepWithin, All = true });
            AddLanes(group, [.. lanes.Where(lane => !lane.IsEmpty)], always, around, around.InnerPattern(group.Id), CapturesOf(group, instances[0].Arguments), planned);
            return;
        }

        foreach (var inside in instances)
        {
            var children = Walk(group.Children, inside);
            if (children.IsEmpty) continue;
            planned.Add(new PlannedGroup
            {
                Group = group,
                Id = inside.Id,
                Pattern = inside.Pattern,
                Arguments = inside.Arguments,
                Words = inside.Words,
                OperatorPlace = inside.OperatorPlace,
                Captures = CapturesOf(group, inside.Arguments),
                Children = children,
                Always = Walk(group.Always, inside with { Within = AlwaysStepWithin, All = true }),
            });
        }
    }

    private void AddTogether(Together together, Surroundings around, ImmutableArray<PlannedNode>.Builder planned)
    {
        if (!Applies(together.When, around.Arguments))
        {
            foreach (var branch in together.Branches) NoteLeftOut(branch.Children, around, around.Because(together.When!));
            return;
        }

        var lanes = together.Branches.Select(branch => (branch.Name, Nodes: Walk(branch.Children, around))).Where(lane => !lane.Nodes.IsEmpty).ToList();
        AddLanes(together, [.. lanes.Select(lane => lane.Nodes)], [], around, null, [], planned, [.. lanes.Select(lane => lane.Name)]);
    }

    private static void AddLanes(
        Node node,
        ImmutableArray<ImmutableArray<PlannedNode>> lanes,
        ImmutableArray<PlannedNode> always,
        Surroundings around,
        string? screen,
        ImmutableArray<PlannedCapture> captures,
        ImmutableArray<PlannedNode>.Builder planned,
        params ImmutableArray<string> names)
    {
        if (lanes.IsEmpty) return;
        planned.Add(new PlannedLanes
        {
            Node = node,
            Id = around.Inner(node.Id),
            Pattern = around.InnerPattern(node.Id),
            Arguments = around.Arguments,
            Words = around.Words,
            OperatorPlace = node.OperatorPlace ?? around.OperatorPlace,
            Captures = captures,
            Lanes = lanes,
            Names = names,
            Always = always,
            Screen = screen,
        });
    }

    /// <summary>The group once, or once for each combination of its loop values that this vehicle has.</summary>
    /// <param name="notFitted">Takes the others; null: nobody wants to know.</param>
    private IEnumerable<Surroundings> Instances(Group group, Surroundings around, ImmutableArray<LeftOut>.Builder? notFitted = null)
    {
        var pattern = around.InnerPattern(group.Id);
        var inside = around with
        {
            Id = around.Inner(group.Id),
            Pattern = pattern,
            Words = group.Words.IsEmpty ? around.Words : group.Words.AddRange(around.Words),
            OperatorPlace = group.OperatorPlace ?? around.OperatorPlace,
        };
        IEnumerable<(Arguments Arguments, ImmutableArray<string> Values)> loops = [(around.Arguments, [])];
        foreach (var loop in group.Each)
        {
            loops = loops.SelectMany(outer => loop.Values
                .Select(value => (When: value.When, Arguments: outer.Arguments.With(loop.Name, new TextValue(value.Value)), Values: outer.Values.Add(value.Value)))
                .Where(turn => Fits(turn.When, outer.Arguments, () => $"{inside.Id}[{string.Join(',', turn.Values)}]"))
                .Select(turn => (turn.Arguments, turn.Values)));
        }

        bool Fits(Expression? when, Arguments arguments, Func<string> id)
        {
            if (Applies(when, arguments)) return true;
            notFitted?.Add(new LeftOut(id(), when!, arguments));
            return false;
        }

        foreach (var (arguments, values) in loops)
        {
            var id = values.IsEmpty ? inside.Id : $"{inside.Id}[{string.Join(',', values)}]";
            yield return inside with { Id = id, Arguments = ArgumentsOf(group, arguments), All = around.All || Wanted(id, pattern) };
        }
    }

    /// <summary>A fragment sees its parameters only, which loop names of its own group may give; a plain group sees what is around it.</summary>
    private Arguments ArgumentsOf(Group group, Arguments outer) => group.Fragment is null
        ? outer
        : group.Arguments.Aggregate(Arguments.None, (sum, argument) => sum.With(argument.Name, Known(argument.Value, outer)));

    private Value Known(Operand operand, Arguments arguments) => operand switch
    {
        Operand.Constant constant => constant.Value,
        Operand.Computed computed => computed.Expression.Evaluate(new FactScope(_order, arguments)),
        _ => throw new InvalidOperationException("an operand is written or computed"),
    };

    private bool Applies(Expression? when, Arguments arguments) => when is null || when.IsTrue(new FactScope(_order, arguments));

    private void NoteLeftOut(Group group, Surroundings around, LeftOut because)
    {
        foreach (var inside in Instances(group, around)) NoteLeftOut(group.Children, inside, because);
    }

    private void NoteLeftOut(ImmutableArray<Node> nodes, Surroundings around, LeftOut because)
    {
        foreach (var node in nodes)
        {
            switch (node)
            {
                case Step step: _leftOut.Add(because with { Id = around.Inner(step.Id) }); break;
                case Group group: NoteLeftOut(group, around, because); break;
                case Together together:
                    foreach (var branch in together.Branches) NoteLeftOut(branch.Children, around, because);
                    break;
            }
        }
    }

    private ImmutableArray<string> IndexesOf(Step step, Arguments arguments) => step.Action is StepAction.Read { Channel.Index: null } read
        ? [.. read.Description.Indexes.Where(index => Applies(index.When, arguments)).Select(index => index.Value)]
        : [];

    /// <summary>What a vehicle lacks leaves no trace.</summary>
    private ImmutableArray<PlannedCapture> CapturesOf(Group group, Arguments arguments)
    {
        if (group.Capture is not { } capture) return [];
        var planned = ImmutableArray.CreateBuilder<PlannedCapture>();
        foreach (var (use, channel, every) in capture.Channels)
        {
            if (!Applies(channel.When, arguments)) continue;
            if (channel.Indexes.IsEmpty) planned.Add(new PlannedCapture(use.Role, channel, null, every));
            var wanted = use.Index?.Resolve(arguments);
            foreach (var index in channel.Indexes)
            {
                if ((wanted ?? index.Value) == index.Value && Applies(index.When, arguments)) planned.Add(new PlannedCapture(use.Role, channel, index.Value, every));
            }
        }

        return planned.ToImmutable();
    }

    /// <summary>The one row of a limit that holds for this vehicle, or the window of the step's own index.</summary>
    private Expectation? Pick(Expectation? expect, StepAction action, Arguments arguments) => expect switch
    {
        Expectation.ByVehicle rows => Pick(rows.Rows.First(row => Applies(row.When, arguments)).Is, action, arguments),
        Expectation.ByIndex windows when (windows.Index ?? IndexOf(action)) is { } index =>
            Pick(windows.Windows[index.Resolve(arguments)], action, arguments),
        _ => expect,
    };

    /// <summary>The index of the one value that the action finds; null when it reads all of them.</summary>
    private static IndexUse? IndexOf(StepAction action) => action switch
    {
        StepAction.Read read => read.Channel.Index,
        StepAction.Sample sample => sample.Channel.Index,
        _ => null,
    };

    private bool WantedGroup(string id, string pattern) => _only.Any(only => only == id || only == pattern);

    private bool Wanted(string id, string pattern) => _only.Any(only => only == id || only == pattern);
}
