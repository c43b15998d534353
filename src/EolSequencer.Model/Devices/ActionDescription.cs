using System.Collections.Immutable;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Values;

namespace EolSequencer.Model.Devices;

/// <summary>Something a device does on request.</summary>
public sealed record ActionDescription
{
    /// <summary>Its name in the device kind.</summary>
    public required string Name { get; init; }

    /// <summary>The index values, each with the vehicles it exists for; empty: the action has no index.</summary>
    public ImmutableArray<IndexValue> Indexes { get; init; } = [];

    /// <summary>The value that <c>set … to</c> hands over; null: the action is done, not set.</summary>
    public ValueShape? To { get; init; }

    /// <summary>The named values that <c>do … with</c> hands over.</summary>
    public ImmutableArray<ActionParameter> Parameters { get; init; } = [];

    /// <summary>The value it returns; null: a confirmation only.</summary>
    public ValueShape? Returns { get; init; }

    /// <summary>Something moves: a step that uses it carries a caution.</summary>
    public bool Moves { get; init; }

    /// <summary>Something is energised: a step that uses it carries a caution.</summary>
    public bool Energises { get; init; }

    /// <summary>Something gets hot: a step that uses it carries a caution.</summary>
    public bool Heats { get; init; }

    /// <summary>True: after a crash it may simply be done again.</summary>
    public bool IsRepeatable { get; init; }

    /// <summary>The vehicles that have it; null: all.</summary>
    public Expression? When { get; init; }

    /// <summary>How the vehicle bus does it; null for other device kinds.</summary>
    public ActionSource? Source { get; init; }
}

/// <summary>A named value of an action.</summary>
public sealed record ActionParameter(string Name, ValueShape Shape);
