using EolSequencer.Model.Plants;
using EolSequencer.Records.Reading;

namespace EolSequencer.Station.Fitness;

/// <summary>How a station stands with its check against the reference.</summary>
public enum ShiftCheckOutcome
{
    Passed,

    /// <summary>Not run to its end since it came due.</summary>
    Due,

    /// <summary>Run to its end, and not passed: failed, or it could not be judged.</summary>
    Failed,
}

/// <summary>The check of a station that is due now.</summary>
/// <param name="Since">The shift or day that it is for.</param>
/// <param name="Run">The newest whole check since then; null: there is none.</param>
/// <param name="Words">What there is to say, for people, with what to do.</param>
public sealed record ShiftCheckState(ShiftCheckOutcome Outcome, ShiftSpan Since, RunSummary? Run, string Words);
