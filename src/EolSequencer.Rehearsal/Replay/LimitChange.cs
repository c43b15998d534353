using EolSequencer.Engine.Planning;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Rehearsal.Replay;

/// <summary>The time limits of a step in two revisions; the longest time where there is none.</summary>
internal sealed record LimitChange(TimeSpan Old, TimeSpan New)
{
    public bool IsChanged => Old != New;

    public bool IsLonger => New > Old;

    public bool IsShorter => New < Old;

    /// <summary>Null: what a run alone computes is written otherwise.</summary>
    /// <param name="differs">Whether they are written otherwise.</param>
    public static LimitChange? Between(PlannedStep old, PlannedStep now, Order order, bool differs)
    {
        if (!differs) return new LimitChange(TimeSpan.MaxValue, TimeSpan.MaxValue);
        return Of(old, order) is { } before && Of(now, order) is { } after ? new LimitChange(before, after) : null;
    }

    private static TimeSpan? Of(PlannedStep planned, Order order)
    {
        if (planned.Step.Within is not { } within) return TimeSpan.MaxValue;
        return OrderScope.Known(within, order, planned.Arguments) is NumberValue time && time.TryIn(UnitTable.Second, out var seconds)
            ? new TimeSpan((long)(seconds * TimeSpan.TicksPerSecond))
            : null;
    }
}
