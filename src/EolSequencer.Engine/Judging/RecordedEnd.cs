using System.Collections.Immutable;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Values;

namespace EolSequencer.Engine.Judging;

/// <summary>How one attempt of a step ended, as a record tells it.</summary>
/// <param name="Ending">How it came to its end. Whether a value is judged or only taken is left to the step that judges it.</param>
/// <param name="Took">Time from the attempt's start to its end.</param>
public sealed record RecordedEnd(Ending Ending, TimeSpan Took)
{
    /// <summary>The value found; null when there is none.</summary>
    public Value? Value { get; init; }

    /// <summary>The values of a channel that was read as a whole; a value that is missing is null, and then says what for.</summary>
    public ImmutableArray<(string Index, Value? Value, Verdict AsMissing)> ByIndex { get; init; } = [];

    /// <summary>What was found out about the value as the serial of a part; null: it is none.</summary>
    public CriterionResult? Serial { get; init; }

    /// <summary>The time that <c>takes</c> judges, in seconds; null when the condition did not end the step.</summary>
    public decimal? Counted { get; init; }

    /// <summary>What a missing value says: of the vehicle or of the equipment.</summary>
    public Verdict AsMissing { get; init; } = Verdict.Error;
}

/// <summary>What an attempt comes to when it is judged from a record.</summary>
/// <param name="Criteria">As an event of a run has them.</param>
/// <param name="Fault">Why an expression has no value; null when all have.</param>
public sealed record JudgedFromRecord(ImmutableArray<CriterionResult> Criteria, Verdict Measured, Verdict Counted, string? Fault);
