using System.Collections.Immutable;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Texts;

namespace EolSequencer.Model.Events;

/// <summary>A step attempt ended: what was found, and what it counts for. Of several attempts the last one counts.</summary>
public sealed record Judged : RunEvent
{
    /// <summary>Full id with loop values.</summary>
    public required string Step { get; init; }

    /// <summary>From 1.</summary>
    public required int Attempt { get; init; }

    /// <summary>Start of the attempt, microseconds since the run began.</summary>
    public required long Start { get; init; }

    /// <summary>Time from start to end, microseconds.</summary>
    public required long Took { get; init; }

    /// <summary>Each criterion with its own verdict; empty for a step that judges nothing.</summary>
    public ImmutableArray<CriterionResult> Criteria { get; init; } = [];

    /// <summary>What was found.</summary>
    public required Verdict Measured { get; init; }

    /// <summary>What it does to the roll-up.</summary>
    public required Verdict Counted { get; init; }

    /// <summary>Why there is no value; null when there is one.</summary>
    public MissingCause? Cause { get; init; }

    /// <summary>What happened, for people; null when there is nothing to add.</summary>
    public string? Detail { get; init; }

    /// <summary>The requirements that the step shows to be met, by their numbers.</summary>
    public ImmutableArray<string> Requirements { get; init; } = [];

    /// <summary>What to look at first, names filled in; null when it passed, or when the author says nothing.</summary>
    public LocalText? Repair { get; init; }

    /// <summary>What the author calls a miss, by its code in the catalogue; null when it passed, or when the author says nothing.</summary>
    public string? Nonconformity { get; init; }

    /// <summary>The picture beside the prompt, relative to the plant's folder; null when it passed, or when there is none.</summary>
    public string? Picture { get; init; }

    /// <summary>The part whose serial its value is, now kept with the vehicle, with loop values; null: none.</summary>
    public string? Part { get; init; }

    /// <summary>The readings it was judged from, in order; a prompt has none.</summary>
    public ImmutableArray<ReadingUsed> Readings { get; init; } = [];
}

/// <summary>One criterion of a step.</summary>
/// <param name="Of">Which: empty for the step's value, <c>takes</c>, or the index of a channel.</param>
/// <param name="Value">The value as exact decimal text, text, yes/no or list; null when missing.</param>
/// <param name="Unit">Its unit; null when it has none.</param>
/// <param name="Expected">The expectation as judged, for people: <c>1.60 .. 2.40 A</c>; null when nothing was expected.</param>
/// <param name="Low">Lower end as judged, decimal text; null when open or not a window.</param>
/// <param name="High">Upper end as judged.</param>
/// <param name="Uncertainty">Expanded uncertainty, decimal text; null when none.</param>
/// <param name="RecordOnly">True: recorded and counted as none.</param>
public sealed record CriterionResult(
    string Of, string? Value, string? Unit, string? Expected, string? Low, string? High, string? Uncertainty, Verdict Verdict, bool RecordOnly)
{
    /// <summary>True: the uncertainty kept its distance from both ends (<see cref="GuardedDecision"/>); false: the window alone decided.</summary>
    public bool IsGuarded { get; init; }

    /// <summary>True: the value is a text, yes/no or a list, however much it looks like a number.</summary>
    public bool IsText { get; init; }
}

/// <summary>A reading a verdict rests on.</summary>
/// <param name="Channel">As an author writes it: <c>bus.vin</c>.</param>
/// <param name="Raw">Its bytes as hex; null when there are none.</param>
/// <param name="At">Reception, microseconds since the run began.</param>
/// <param name="Instrument">The instrument's identity; null for a vehicle bus.</param>
public sealed record ReadingUsed(string Channel, string? Raw, long At, string? Instrument);
