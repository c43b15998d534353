using System.Collections.Immutable;

namespace EolSequencer.Engine.Planning;

/// <summary>What one run will do on one vehicle.</summary>
public sealed record Plan
{
    public required ImmutableArray<PlannedNode> Prepare { get; init; }
    public required ImmutableArray<PlannedNode> Steps { get; init; }
    public required ImmutableArray<PlannedNode> Always { get; init; }
    public required ImmutableArray<PlannedNode> AfterVerdict { get; init; }

    /// <summary>The steps whose <c>when</c>, or that of a group around them, is false for this vehicle, in written order.</summary>
    public required ImmutableArray<LeftOut> LeftOut { get; init; }

    /// <summary>The turns of loops whose value this vehicle does not have, such as a control unit that is not fitted, in written order.</summary>
    public required ImmutableArray<LeftOut> NotFitted { get; init; }

    /// <summary>Full ids of <see cref="LeftOut"/>.</summary>
    public ImmutableArray<string> NotApplicable => [.. LeftOut.Select(one => one.Id)];

    /// <summary>The steps that enter the roll-up, in written order: prepare, steps, always.</summary>
    public required ImmutableArray<PlannedStep> Counting { get; init; }

    /// <summary>All steps of a node, in written order.</summary>
    public static ImmutableArray<PlannedStep> StepsOf(PlannedNode node) => StepsOf(ImmutableArray.Create(node));

    /// <summary>All steps of several nodes, in written order.</summary>
    public static ImmutableArray<PlannedStep> StepsOf(params ReadOnlySpan<ImmutableArray<PlannedNode>> parts)
    {
        var steps = ImmutableArray.CreateBuilder<PlannedStep>();
        foreach (var part in parts) Add(part, steps);
        return steps.DrainToImmutable();
    }

    /// <summary>All nodes of several parts, in written order, an outer one before what is in it.</summary>
    public static IEnumerable<PlannedNode> NodesOf(params IEnumerable<ImmutableArray<PlannedNode>> parts)
    {
        foreach (var node in parts.SelectMany(part => part))
        {
            yield return node;
            IEnumerable<ImmutableArray<PlannedNode>> inside = node switch
            {
                PlannedGroup group => [group.Children, group.Always],
                PlannedLanes lanes => [.. lanes.Lanes, lanes.Always],
                _ => [],
            };
            foreach (var inner in NodesOf(inside)) yield return inner;
        }
    }

    private static void Add(ImmutableArray<PlannedNode> nodes, ImmutableArray<PlannedStep>.Builder steps)
    {
        foreach (var node in nodes)
        {
            switch (node)
            {
                case PlannedStep step:
                    steps.Add(step);
                    break;
                case PlannedGroup group:
                    Add(group.Children, steps);
                    Add(group.Always, steps);
                    break;
                case PlannedLanes lanes:
                    foreach (var lane in lanes.Lanes) Add(lane, steps);
                    Add(lanes.Always, steps);
                    break;
            }
        }
    }
}
