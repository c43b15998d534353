using System.Collections.Immutable;
using EolSequencer.Model.Judging;

namespace EolSequencer.Model.Events;

/// <summary>The last event of a run.</summary>
public sealed record RunEnded : RunEvent
{
    /// <summary>Worst counted verdict and the numbers of each.</summary>
    public required RollUp RollUp { get; init; }

    /// <summary>True when the run did not come to its end by itself.</summary>
    public required bool Interrupted { get; init; }

    /// <summary>Full ids of the steps that were planned and not reached.</summary>
    public ImmutableArray<string> NotReached { get; init; } = [];

    /// <summary>Full ids of the steps behind the verdict, whose results count for nothing.</summary>
    public ImmutableArray<string> NotCounted { get; init; } = [];
}
