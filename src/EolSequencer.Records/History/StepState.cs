using EolSequencer.Model.Judging;
using EolSequencer.Records.Reading;

namespace EolSequencer.Records.History;

/// <summary>A step of a vehicle as it stands: what it counted for last, over the whole run and the retests that name it.</summary>
/// <param name="Step">Full id with loop values.</param>
/// <param name="Counted">Its last counted verdict; inconclusive when the run that was to find it did not reach it.</param>
/// <param name="Run">The run that this comes from.</param>
/// <param name="First">What its first attempt in the whole run counted for; null when the whole run did not reach it, or did not plan it.</param>
/// <param name="Concession">Id of the nonconformity for which the vehicle may be used as this run found it; null: none.</param>
/// <param name="Last">What was found last; null when it was not reached.</param>
public sealed record StepState(string Step, Verdict Counted, string Run, Verdict? First, StepSummary? Last, string? Concession = null)
{
    /// <summary>Whether it says anything about the vehicle: what judges nothing, or only for the record, does not.</summary>
    public bool IsJudged => Counted != Verdict.None;

    /// <summary>Whether it speaks against the vehicle: it did not pass and carries no concession.</summary>
    public bool IsOpen => IsJudged && Counted != Verdict.Pass && Concession is null;
}
