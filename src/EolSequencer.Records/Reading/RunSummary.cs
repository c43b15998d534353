using System.Collections.Immutable;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;

namespace EolSequencer.Records.Reading;

/// <summary>A run on one line.</summary>
public sealed record RunSummary
{
    /// <summary>Id of the run.</summary>
    public required string Run { get; init; }
    public required string Plant { get; init; }
    public required string Station { get; init; }
    public required string StationKind { get; init; }
    public required string Vin { get; init; }
    public required string Order { get; init; }
    public required string VehicleType { get; init; }
    public required string Sequence { get; init; }
    public required int Revision { get; init; }
    public required RunMode Mode { get; init; }

    /// <summary>True when only some of the steps were asked for; such a run shows nothing about the vehicle as a whole.</summary>
    public required bool IsPartial { get; init; }

    /// <summary>The whole run of which this one repeats what did not pass; null: it repeats none.</summary>
    public string? RetestOf { get; init; }
    public string? Person { get; init; }

    /// <summary>Number of steps planned.</summary>
    public required int Planned { get; init; }

    /// <summary>Wall time of the beginning, UTC.</summary>
    public required DateTimeOffset Begun { get; init; }

    /// <summary>Under which conditions it is made; empty where none were read.</summary>
    public ImmutableArray<Condition> Conditions { get; init; } = [];

    /// <summary>How it ended; null while it is under way, and when it was broken off by a crash.</summary>
    public RunEnd? End { get; init; }

    /// <summary>True when it came to its end by itself, whole, with the verdict pass.</summary>
    public bool HasPassed => End is { IsInterrupted: false, Numbers.Releases: true } && !IsPartial;
}
