using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;

namespace EolSequencer.Rehearsal.Replay;

/// <summary>One attempt of a step as the record has it.</summary>
/// <param name="Series">What a <c>sample</c> read; null for every other step, and when it was cut short.</param>
/// <param name="ByPerson">A person ended it: stopped the run, or passed the step over.</param>
internal sealed record RecordedAttempt(Judged Judged, SeriesRecorded? Series, bool ByPerson)
{
    /// <summary>True when it was cut short, passed over or never answered: nothing was found that limits could judge.</summary>
    public bool IsCut => Judged.Measured == Verdict.Inconclusive && Judged.Criteria.IsEmpty;

    /// <summary>True when an expression had no value.</summary>
    public bool IsFault => Judged is { Measured: Verdict.Error, Cause: null, Criteria.IsEmpty: true };

    public TimeSpan Took => TimeSpan.FromMicroseconds(Judged.Took);

    /// <summary>The time that <c>takes</c> judged; null when it judged none.</summary>
    public CriterionResult? Time => Judged.Criteria.FirstOrDefault(criterion => criterion.Of == "takes");
}
