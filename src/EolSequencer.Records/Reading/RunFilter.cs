using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;

namespace EolSequencer.Records.Reading;

/// <summary>Which runs are wanted; what is null is not asked about. Newest first.</summary>
public sealed record RunFilter
{
    /// <summary>Those that count, or others; null: all, each marked.</summary>
    public RunMode? Mode { get; init; } = RunMode.Production;

    /// <summary>Identification number of the vehicle, exactly.</summary>
    public string? Vin { get; init; }

    public string? Station { get; init; }

    public string? StationKind { get; init; }

    public string? Sequence { get; init; }

    public Verdict? Verdict { get; init; }

    /// <summary>Begun at this moment or later.</summary>
    public DateTimeOffset? From { get; init; }

    /// <summary>Begun before this moment.</summary>
    public DateTimeOffset? Until { get; init; }

    /// <summary>True: begun and not ended, because they are under way or were broken off by a crash.</summary>
    public bool OnlyUnfinished { get; init; }

    /// <summary>Only runs that began before this one, to turn to the next page.</summary>
    public string? Before { get; init; }

    /// <summary>At most so many, from 1.</summary>
    public int Most { get; init; } = 100;
}
