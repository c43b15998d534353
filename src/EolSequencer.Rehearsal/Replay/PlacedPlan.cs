using System.Collections.Immutable;
using EolSequencer.Engine.Planning;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Rehearsal.Replay;

/// <summary>The plan of one sequence for one vehicle, by id.</summary>
internal sealed class PlacedPlan
{
    private readonly Dictionary<string, PlacedStep> _steps = new(StringComparer.Ordinal);
    private readonly List<PlacedStep> _inOrder = [];
    private readonly Dictionary<string, PlannedNode> _captured = new(StringComparer.Ordinal);
    private readonly List<PlannedNode> _retrying = [];

    private PlacedPlan(Plan plan) => NotApplicable = plan.NotApplicable.ToHashSet(StringComparer.Ordinal);

    /// <summary>The steps that enter the roll-up, in written order.</summary>
    public IReadOnlyList<PlacedStep> Steps => _inOrder;

    public IReadOnlySet<string> NotApplicable { get; }

    /// <summary>Groups that are tried again as a whole.</summary>
    public IReadOnlyList<PlannedNode> Retrying => _retrying;

    public static PlacedPlan Of(CheckedSequence sequence, Order order, ImmutableArray<string> only)
    {
        var plan = Planner.For(sequence, order, only);
        var placed = new PlacedPlan(plan);
        placed.Add(plan.Prepare, [], false);
        placed.Add(plan.Steps, [], false);
        placed.Add(plan.Always, [], true);
        return placed;
    }

    public PlacedStep? Find(string id) => _steps.GetValueOrDefault(id);

    /// <summary>What is kept of a channel while a group runs; null: nothing.</summary>
    public PlannedCapture? Capture(string group, string channel) =>
        _captured.GetValueOrDefault(group)?.Captures.FirstOrDefault(capture => capture.Name == channel);

    private void Add(ImmutableArray<PlannedNode> nodes, ImmutableArray<PlannedNode> around, bool runsAlways)
    {
        foreach (var node in nodes)
        {
            if (!node.Captures.IsEmpty) _captured[node.Id] = node;
            if (node is not PlannedStep && PlacedStep.NodeOf(node).Retry is not null) _retrying.Add(node);
            switch (node)
            {
                case PlannedStep step:
                    var placed = new PlacedStep(step, around, runsAlways);
                    _steps[step.Id] = placed;
                    _inOrder.Add(placed);
                    break;
                case PlannedGroup group:
                    Add(group.Children, around.Add(group), runsAlways);
                    Add(group.Always, around.Add(group), true);
                    break;
                case PlannedLanes lanes:
                    foreach (var lane in lanes.Lanes) Add(lane, around.Add(lanes), runsAlways);
                    Add(lanes.Always, around.Add(lanes), true);
                    break;
            }
        }
    }
}
