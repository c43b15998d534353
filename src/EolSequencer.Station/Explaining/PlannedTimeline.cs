using System.Collections.Immutable;
using EolSequencer.Engine.Planning;
using EolSequencer.Model.Planning;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Station.Explaining;

/// <summary>Planned time of the parts of one vehicle's plan, by the rules that plan all combinations of a sequence.</summary>
internal sealed class PlannedTimeline(Subject subject)
{
    private readonly PlannedTimes _times = subject.Plant.Planned;
    private readonly Order _order = subject.Order;
    private readonly HashSet<string> _exclusive = [.. subject.Sequence.Roles.Where(role => role.Kind.IsExclusive).Select(role => role.Role)];

    /// <summary>What comes one after the other.</summary>
    public TimeSpan Of(ImmutableArray<PlannedNode> nodes) => new(Series(nodes).Total[0]);

    public TimeSpan Of(PlannedNode node) => new(Load(node).Total[0]);

    private PlannedLoad Series(ImmutableArray<PlannedNode> nodes)
    {
        var load = new PlannedLoad(1);
        foreach (var node in nodes) load.Add(Load(node));
        return load;
    }

    private PlannedLoad Load(PlannedNode node)
    {
        switch (node)
        {
            case PlannedStep step: return OfStep(step);
            case PlannedGroup group: return Group(group.Group, [Series(group.Children), Series(group.Always)]);
            case PlannedLanes lanes:
                var beside = PlannedLoad.SideBySide([.. lanes.Lanes.Select(Series)], 1);
                return Group(lanes.Node, [beside, Series(lanes.Always)]);
            default: throw new InvalidOperationException("nothing else is planned");
        }
    }

    private PlannedLoad Group(Node node, ImmutableArray<PlannedLoad> parts)
    {
        var load = new PlannedLoad(1);
        foreach (var part in parts) load.Add(part);
        if (node.Caution is null) return load;
        load.Total[0] += _times.Caution.Ticks;
        load.Person[0] += _times.Caution.Ticks;
        return load;
    }

    private PlannedLoad OfStep(PlannedStep planned)
    {
        var (step, load) = (planned.Step, new PlannedLoad(1));
        var time = StepTime.Of(step, _times, operand => OrderScope.Known(operand, _order, planned.Arguments)).Ticks;
        load.Total[0] = time;
        if (step.Action.Prompt is not null || step.Caution is not null) load.Person[0] = time;
        if (step.Action.RoleUsed is { } role && _exclusive.Contains(role)) load.Device(role)[0] = time;
        return load;
    }
}
