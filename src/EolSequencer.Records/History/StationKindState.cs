using System.Collections.Immutable;
using EolSequencer.Model.Judging;
using EolSequencer.Records.Reading;

namespace EolSequencer.Records.History;

/// <summary>A vehicle at a station kind: its newest whole run, the retests that name it, and what they come to step by step.</summary>
public sealed record StationKindState
{
    /// <summary>The newest whole run.</summary>
    public required RunSummary Run { get; init; }

    /// <summary>The retests that name it, oldest first.</summary>
    public required ImmutableArray<RunSummary> Retests { get; init; }

    /// <summary>Every step that was planned there and applies, in the order they were found.</summary>
    public required ImmutableArray<StepState> Steps { get; init; }

    public string StationKind => Run.StationKind;

    /// <summary>Runs that began and did not end: under way, or broken off by a crash.</summary>
    public ImmutableArray<string> Unfinished => [.. Retests.Prepend(Run).Where(run => run.End is null).Select(run => run.Run)];

    /// <summary>What speaks against the vehicle.</summary>
    public IEnumerable<StepState> Open => Steps.Where(step => step.IsOpen);

    /// <summary>The steps added up as they stand.</summary>
    public RollUp Numbers => RollUp.Of(Steps.Select(step => step.Counted));

    /// <summary>Whether anything was judged at all.</summary>
    public bool HasJudged => Steps.Any(step => step.IsJudged);

    /// <summary>True when every applicable judged step has passed or carries a concession, there is one, and no run is unfinished.</summary>
    public bool HasPassed => Unfinished.IsEmpty && HasJudged && !Open.Any();

    /// <summary>True when the whole run came to its end and every judged step of it passed at its first attempt; retests change nothing about it.</summary>
    public bool IsFirstTimeThrough => Run.HasPassed && Steps.All(step => step.First is null or Verdict.None or Verdict.Pass);
}
