using EolSequencer.Language.Expressions;

namespace EolSequencer.Station.Identifying;

/// <summary>What is known when a vehicle comes to a station.</summary>
public sealed record IdentifyRequest
{
    /// <summary>The station's file.</summary>
    public required string StationFile { get; init; }

    /// <summary>The vehicle's number as it was scanned or typed; its order is looked for in the plant. Either this or <see cref="OrderFile"/>.</summary>
    public string? Vin { get; init; }

    /// <summary>The vehicle's order as a file.</summary>
    public string? OrderFile { get; init; }

    /// <summary>A sequence that is wanted for itself, as a file; null: the one in force.</summary>
    public string? SequenceFile { get; init; }

    /// <summary>Where compiled expressions are kept.</summary>
    public required ExpressionCache Cache { get; init; }
}
