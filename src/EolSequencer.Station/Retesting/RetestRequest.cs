using EolSequencer.Language.Expressions;
using EolSequencer.Model.Events;
using EolSequencer.Records;

namespace EolSequencer.Station.Retesting;

/// <summary>What is known when a vehicle comes to be tested again.</summary>
public sealed record RetestRequest
{
    /// <summary>The record that has the run.</summary>
    public required RecordFolder Record { get; init; }

    /// <summary>Id of the run that is repeated: a whole run, or a retest of it.</summary>
    public required string Run { get; init; }

    /// <summary>The station's file.</summary>
    public required string StationFile { get; init; }

    /// <summary>What runs at this station count for.</summary>
    public required RunMode Mode { get; init; }

    /// <summary>The vehicle's number as it was scanned or typed; null: not asked.</summary>
    public string? Vin { get; init; }

    /// <summary>A newer revision of the sequence, as a file; null: the text that the run had.</summary>
    public string? SequenceFile { get; init; }

    /// <summary>Where compiled expressions are kept.</summary>
    public required ExpressionCache Cache { get; init; }
}
