using System.Collections.Immutable;
using EolSequencer.Model.Judging;

namespace EolSequencer.Model.Events;

/// <summary>Under which conditions a run is made, read once behind <c>prepare</c>. They judge nothing; failures are grouped by them later.</summary>
public sealed record ConditionsRead : RunEvent
{
    /// <summary>In the order in which the sequence names them; what the vehicle does not have is not among them.</summary>
    public required ImmutableArray<Condition> Conditions { get; init; }
}

/// <summary>One condition.</summary>
/// <param name="Name">As the sequence names it, with the index of an indexed channel: <c>software[gateway]</c>.</param>
/// <param name="Value">Text, or the decimal text of a number; null when it is missing.</param>
/// <param name="Unit">Null where there is none.</param>
/// <param name="Missing">Why there is no value; null when there is one.</param>
/// <param name="Instrument">What it was read with; null for a vehicle bus.</param>
public sealed record Condition(string Name, string? Value, string? Unit, MissingCause? Missing, string? Instrument)
{
    /// <summary>For people: <c>21.5 °C</c>, <c>missing (silent)</c>.</summary>
    public string Words => Value is null ? $"missing ({Missing?.Word()})" : Unit is null ? Value : $"{Value} {Unit}";
}
