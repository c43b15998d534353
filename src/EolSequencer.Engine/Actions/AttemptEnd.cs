using System.Collections.Immutable;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Engine.Actions;

/// <summary>How one attempt of a step ended, before its verdicts are put together.</summary>
internal sealed record AttemptEnd(Ending Ending, long Stamp)
{
    /// <summary>The value found; null when there is none.</summary>
    public Value? Value { get; init; }

    /// <summary>The values of a channel that was read as a whole.</summary>
    public ImmutableArray<(string Index, Value Value)> ByIndex { get; init; } = [];

    /// <summary>The criteria that could be judged.</summary>
    public ImmutableArray<CriterionResult> Criteria { get; init; } = [];

    /// <summary>The part whose serial the value is; null: none, or it was not accepted.</summary>
    public PartName? Part { get; init; }

    /// <summary>The readings it rests on.</summary>
    public ImmutableArray<ReadingUsed> Readings { get; init; } = [];

    /// <summary>Why there is no value.</summary>
    public MissingCause? Cause { get; init; }

    /// <summary>What the missing value says: of the vehicle or of the equipment.</summary>
    public Verdict AsMissing { get; init; } = Verdict.Error;

    /// <summary>For people.</summary>
    public string? Detail { get; init; }

    /// <summary>True when a person ended the step, so that it is not tried again.</summary>
    public bool ByPerson { get; init; }
}
