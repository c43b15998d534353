using System.Collections.Immutable;

namespace EolSequencer.Rehearsal.Replay.WhatIf;

/// <summary>What a revision says of many recorded runs.</summary>
public sealed record WhatIfResult
{
    /// <summary>Runs judged again.</summary>
    public required long Runs { get; init; }

    /// <summary>Steps judged again, each attempt that counts.</summary>
    public required long Steps { get; init; }

    /// <summary>By full id of the step, in the order of the ids.</summary>
    public required ImmutableSortedDictionary<string, StepCounts> ByStep { get; init; }

    /// <summary>The runs in which a verdict changes, oldest first.</summary>
    public required ImmutableArray<RunChange> Changed { get; init; }

    public required FirstTimeThrough FirstTimeThrough { get; init; }

    /// <summary>Runs left out, by the reason.</summary>
    public required ImmutableSortedDictionary<string, long> LeftOut { get; init; }

    /// <summary>Runs that are not as they were written: the first of them with what was found; null when all are.</summary>
    public required string? Trouble { get; init; }

    /// <summary>How many they are.</summary>
    public required long Troubled { get; init; }
}
