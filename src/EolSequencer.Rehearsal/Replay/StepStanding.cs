using System.Collections.Immutable;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;

namespace EolSequencer.Rehearsal.Replay;

/// <summary>What a step comes to in a run, or would have come to.</summary>
/// <param name="Counted">What it does to the roll-up; means nothing where <see cref="IsCounting"/> is false.</param>
/// <param name="Criteria">Values and windows of the attempt that counts.</param>
/// <param name="Detail">What happened, for people; null when there is nothing to add.</param>
public sealed record StepStanding(StandingKind Kind, Verdict Counted, ImmutableArray<CriterionResult> Criteria, string? Detail)
{
    public static StepStanding NotNeeded { get; } = new(StandingKind.NotNeeded, Verdict.None, [], null);

    public static StepStanding NotApplicable { get; } = new(StandingKind.NotApplicable, Verdict.None, [], null);

    public static StepStanding NotReached { get; } = new(StandingKind.NotReached, Verdict.Inconclusive, [], null);

    public static StepStanding Absent { get; } = new(StandingKind.Absent, Verdict.None, [], null);

    public static StepStanding Undecidable { get; } = new(StandingKind.Undecidable, Verdict.None, [], null);

    /// <summary>True when it enters a roll-up.</summary>
    public bool IsCounting => Kind is StandingKind.Judged or StandingKind.NotReached;

    /// <summary>Whether another standing says the same of the step.</summary>
    public bool IsSame(StepStanding other) => Kind == other.Kind && Counted == other.Counted;

    /// <summary>For people: a verdict, or why there is none.</summary>
    public string Word => Kind switch
    {
        StandingKind.Judged => Counted.Word(),
        StandingKind.NotNeeded => "not needed",
        StandingKind.NotApplicable => "not applicable",
        StandingKind.NotReached => "not reached",
        StandingKind.Absent => "not there",
        _ => "undecidable",
    };
}

/// <summary>How a step stands in a run.</summary>
public enum StandingKind
{
    Judged,

    /// <summary>Its <c>only-if</c> was false at its turn.</summary>
    NotNeeded,

    /// <summary>Its <c>when</c> is false for the vehicle.</summary>
    NotApplicable,

    /// <summary>The run ended before its turn; counts as inconclusive.</summary>
    NotReached,

    /// <summary>The sequence has no such step.</summary>
    Absent,

    /// <summary>The record does not tell.</summary>
    Undecidable,
}
