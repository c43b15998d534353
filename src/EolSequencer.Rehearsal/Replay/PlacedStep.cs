using System.Collections.Immutable;
using EolSequencer.Engine.Planning;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Rehearsal.Replay;

/// <summary>A step of a plan, and what is around it.</summary>
/// <param name="Around">Groups and branches around it, outermost first.</param>
/// <param name="RunsAlways">True: it runs whatever happened before.</param>
internal sealed record PlacedStep(PlannedStep Planned, ImmutableArray<PlannedNode> Around, bool RunsAlways)
{
    public string Id => Planned.Id;

    /// <summary>What the author wrote of the nodes around it, then of itself.</summary>
    public ImmutableArray<(PlannedNode Planned, Node Node)> Nodes { get; } = [.. Around.Select(around => (around, NodeOf(around))), (Planned, Planned.Step)];

    /// <summary>Whether anything decides at its turn if it is needed.</summary>
    public bool HasOnlyIf { get; } = Planned.Step.OnlyIf is not null || Around.Any(around => NodeOf(around).OnlyIf is not null);

    public static Node NodeOf(PlannedNode planned) => planned switch
    {
        PlannedStep step => step.Step,
        PlannedGroup group => group.Group,
        PlannedLanes lanes => lanes.Node,
        _ => throw new InvalidOperationException($"unknown node {planned.GetType().Name}"),
    };
}
