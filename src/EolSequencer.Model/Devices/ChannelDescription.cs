using System.Collections.Immutable;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Values;

namespace EolSequencer.Model.Devices;

/// <summary>A named, typed quantity of a device.</summary>
public sealed record ChannelDescription
{
    /// <summary>Its name in the device kind.</summary>
    public required string Name { get; init; }

    /// <summary>Type and unit of one value.</summary>
    public required ValueShape Shape { get; init; }

    /// <summary>The index values, each with the vehicles it exists for; empty: the channel has no index.</summary>
    public ImmutableArray<IndexValue> Indexes { get; init; } = [];

    /// <summary>How often it is polled in a condition; null: 100 ms.</summary>
    public TimeSpan? Every { get; init; }

    /// <summary>True: results arrive once; a read waits for the next one after the step began.</summary>
    public bool IsEvent { get; init; }

    /// <summary>True: silent, refused and an invalid marker speak of the vehicle.</summary>
    public bool MissingFails { get; init; }

    /// <summary>The vehicles that have it; null: all.</summary>
    public Expression? When { get; init; }

    /// <summary>How the vehicle bus obtains it; null for other device kinds, whose station file says so.</summary>
    public ChannelSource? Source { get; init; }
}

/// <summary>A value of an index; <paramref name="When"/> is null when every vehicle has it.</summary>
public sealed record IndexValue(string Value, Expression? When);
