using System.Collections.Immutable;

namespace EolSequencer.Engine.Planning;

/// <summary>What one run will do on one vehicle.</summary>
public sealed record Plan
{
    public required ImmutableArray<PlannedNode> Prepare { get; init; }
    public required ImmutableArray<PlannedNode> Steps { get; init; }
    public required ImmutableArray<PlannedNode> Always { get; init; }
    public required ImmutableArray<PlannedNode> AfterVerdict { get; init; }

    /// <summary>Full ids of the steps whose <c>when</c> is false for this vehicle, in written order.</summary>
    public required ImmutableArray<string> NotApplicable { get; init; }

    /// <summary>The steps that enter the roll-up, in written order: prepare, steps, always.</summary>
    public IEnumerable<PlannedStep> Counting => Prepare.Concat(Steps).Concat(Always).SelectMany(StepsOf);

    /// <summary>All steps of a node, in written order.</summary>
    public static IEnumerable<PlannedStep> StepsOf(PlannedNode node) => node switch
    {
        PlannedStep step => [step],
        PlannedGroup group => group.Children.Concat(group.Always).SelectMany(StepsOf),
        PlannedLanes lanes => lanes.Lanes.SelectMany(lane => lane).Concat(lanes.Always).SelectMany(StepsOf),
        _ => [],
    };
}
