using System.Collections.Immutable;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Source;

namespace EolSequencer.Model.ExpectedResults;

/// <summary>What a test expects of one step, or of all loop values of one.</summary>
/// <param name="Path">As the author wrote it: <c>lamps[low_left].current</c>, <c>lamps.current</c>, <c>loops[driver_bag]</c>.</param>
/// <param name="Place">Where that stands.</param>
/// <param name="Ids">The full ids it stands for; of several only those count that the vehicle has.</param>
/// <param name="Index">The one value of a channel that is read as a whole; null: all that the step finds.</param>
public sealed record ExpectedStep(string Path, SourcePlace Place, ImmutableArray<string> Ids, string? Index)
{
    /// <summary>What becomes of it; with <see cref="Index"/> the verdict of that value. Null: nothing is said.</summary>
    public Stated<StepState>? State { get; init; }

    /// <summary>What the value must be; null: nothing is said.</summary>
    public ExpectedValue? Value { get; init; }

    /// <summary>The time from start to end of its last attempt; null: nothing is said.</summary>
    public Stated<Expectation>? Took { get; init; }

    /// <summary>When its last attempt started, counted from the beginning of the run; null: nothing is said.</summary>
    public Stated<Expectation>? Started { get; init; }

    /// <summary>How many attempts it took; null: nothing is said.</summary>
    public Stated<int>? Attempts { get; init; }

    /// <summary>Why there is no value; null: nothing is said.</summary>
    public Stated<MissingCause>? Cause { get; init; }
}
