using EolSequencer.Model.Judging;

namespace EolSequencer.Rehearsal.Replay;

/// <summary>One step of a recorded run, as it was judged then and as another revision judges it.</summary>
/// <param name="Step">Full id with loop values.</param>
/// <param name="Was">As recorded.</param>
/// <param name="Is">By the revision replayed with.</param>
/// <param name="Why">Why it is undecidable, not reached or gone; null for a plain verdict.</param>
public sealed record ReplayedStep(string Step, StepStanding Was, StepStanding Is, string? Why)
{
    /// <summary>The verdict of its first attempt; null when it had none, or when it is undecidable.</summary>
    public Verdict? FirstIs { get; init; }

    /// <summary>True: the record does not tell what the revision would have said.</summary>
    public bool IsUndecidable => Is.Kind == StandingKind.Undecidable;

    /// <summary>True: the revision says something else.</summary>
    public bool IsChanged => !IsUndecidable && !Is.IsSame(Was);
}
