using System.Collections.Immutable;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Model.Events;

/// <summary>The first event of a run: everything that is fixed from here on.</summary>
public sealed record RunBegun : RunEvent
{
    /// <summary>Id of the run: the station's id and a number that no other run of it has.</summary>
    public required string Run { get; init; }
    public required string Plant { get; init; }
    public required string Station { get; init; }
    public required string StationKind { get; init; }
    public required string Sequence { get; init; }
    public required int Revision { get; init; }
    public required Order Order { get; init; }

    /// <summary>The files the sequence was made from; their texts are kept once, by hash.</summary>
    public required ImmutableArray<SourceCopy> Sources { get; init; }

    /// <summary>SHA-256 of the compiled expressions.</summary>
    public required string Compiled { get; init; }

    /// <summary>Version of this program.</summary>
    public required string Program { get; init; }

    /// <summary>Who began it; null at a station without log-in.</summary>
    public string? Person { get; init; }

    /// <summary>Production, or a rehearsal or check of the station that never counts for a vehicle.</summary>
    public required RunMode Mode { get; init; }

    /// <summary>Seed of a rehearsal; null in production.</summary>
    public ulong? Seed { get; init; }

    /// <summary>Faults injected in a rehearsal.</summary>
    public ImmutableArray<string> Injected { get; init; } = [];

    /// <summary>Time zone of the plant (IANA).</summary>
    public required string Zone { get; init; }

    /// <summary>Wall time, UTC.</summary>
    public required DateTimeOffset Wall { get; init; }

    /// <summary>The instruments bound to the roles.</summary>
    public ImmutableArray<InstrumentInUse> Instruments { get; init; } = [];

    /// <summary>What speaks against the station, for people, where the plant lets it go on all the same; empty: nothing.</summary>
    public ImmutableArray<string> Unfit { get; init; } = [];

    /// <summary>Steps that are not to be run because only some were asked for (<c>--only</c>); empty: all.</summary>
    public ImmutableArray<string> OnlySteps { get; init; } = [];

    /// <summary>The whole run of the same vehicle of which this one repeats what did not pass; null: it repeats none.</summary>
    public string? RetestOf { get; init; }

    /// <summary>Full ids of the steps that do not apply to this vehicle.</summary>
    public ImmutableArray<string> NotApplicable { get; init; } = [];

    /// <summary>Number of steps planned.</summary>
    public required int Planned { get; init; }
}

/// <summary>What a run counts for.</summary>
public enum RunMode
{
    /// <summary>Counts, and every event is durable before it is shown.</summary>
    Production,
    /// <summary>Marked, and kept out of production figures and release.</summary>
    Rehearsal,
    /// <summary>A station was checked against its reference: as durable as production, and about no vehicle.</summary>
    Check,
}

/// <summary>An instrument and the day its calibration is due (null: not stated).</summary>
public sealed record InstrumentInUse(string Role, string Instrument, DateOnly? CalibrationDue);
