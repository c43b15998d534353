using System.Collections.Immutable;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;

namespace EolSequencer.Rehearsal.Replay;

/// <summary>What a revision says of one recorded run. Steps of <c>after-verdict</c> judge nothing of the vehicle and are left out.</summary>
/// <param name="Begun">The run's first event.</param>
/// <param name="Steps">Every step of the revision in written order, then those that it has no more.</param>
/// <param name="Was">The roll-up as recorded, or of what was judged until the run broke off.</param>
/// <param name="IsWhole">True: the run came to its end by itself, with all its steps.</param>
public sealed record ReplayedRun(RunBegun Begun, ImmutableArray<ReplayedStep> Steps, RollUp Was, bool IsWhole)
{
    /// <summary>The roll-up of the steps that are decided.</summary>
    public RollUp Is { get; } = RollUp.Of(Steps.Where(step => step.Is.IsCounting).Select(step => step.Is.Counted));

    public int Undecidable { get; } = Steps.Count(step => step.IsUndecidable);

    /// <summary>The verdict of the run by the revision; null when undecidable steps could make it worse.</summary>
    public Verdict? Verdict => Undecidable == 0 || Is.Verdict == Model.Judging.Verdict.Error ? Is.Verdict : null;

    /// <summary>Whether everything passed at its first attempt, as recorded.</summary>
    public required bool WasFirstTimeThrough { get; init; }

    /// <summary>Whether everything would have; null when undecidable steps decide it.</summary>
    public bool? IsFirstTimeThrough
    {
        get
        {
            var isMissed = !IsWhole || Steps.Any(step => step.FirstIs > Model.Judging.Verdict.Pass || (step.Is.IsCounting && step.Is.Counted > Model.Judging.Verdict.Pass));
            if (isMissed) return false;
            return Undecidable > 0 ? null : Is.Verdict == Model.Judging.Verdict.Pass;
        }
    }
}
