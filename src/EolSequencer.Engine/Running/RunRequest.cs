using System.Collections.Immutable;
using EolSequencer.Engine.Planning;
using EolSequencer.Model.Events;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Engine.Running;

/// <summary>All that one run needs.</summary>
public sealed record RunRequest
{
    public required CheckedSequence Sequence { get; init; }
    public required Plan Plan { get; init; }
    public required Order Order { get; init; }

    /// <summary>A device for every role of the sequence.</summary>
    public required IReadOnlyDictionary<string, IDevice> Devices { get; init; }
    public required IOperator Operator { get; init; }
    public required IRunJournal Journal { get; init; }
    public required TimeProvider Time { get; init; }
    public ILiveValues Live { get; init; } = ILiveValues.Nowhere;

    /// <summary>Knows the parts of other vehicles.</summary>
    public IPartSerials Serials { get; init; } = IPartSerials.None;

    /// <summary>The events of a run that broke off and is taken up; empty: it begins.</summary>
    public ImmutableArray<RunEvent> Past { get; init; } = [];

    /// <summary>Who takes it up; null when nobody is known.</summary>
    public string? Person { get; init; }

    /// <summary>The first event, complete but for number, time and what the plan knows.</summary>
    public required Func<int, long, RunBegun> Begin { get; init; }
}
