using EolSequencer.Language.Binding.Sequences;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.ExpectedResults;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.ExpectedResults;

/// <summary>Finds what no run can bring about: the verdict of a run is the worst that a step of it counts with.</summary>
internal static class Contradictions
{
    /// <summary>Reports what of a test excludes each other.</summary>
    /// <param name="steps">All that the test lists; none of them was refused.</param>
    public static void Find(CheckedSequence sequence, Stated<Verdict> verdict, Stated<OtherSteps> others, IReadOnlyList<ExpectedStep> steps, Report report)
    {
        // What runs behind the verdict cannot change it.
        var behind = StepPath.In(sequence.AfterVerdict).Select(path => path.Id).ToHashSet(StringComparer.Ordinal);
        var counting = steps.Where(step => !step.Ids.IsEmpty && !behind.Contains(step.Ids[0])).ToList();
        foreach (var step in counting)
        {
            if (Counts(step) is not { } counts || counts <= verdict.Value || step.Index is not null) continue;
            report.Add(ExpectedCodes.Contradiction, step.State!.Place,
                $"'{step.Path}' is to be {step.State.Value.Word()}, so the run is at least {counts.Word()} and never {verdict.Value.Word()}", $"write  verdict: {counts.Word()}  for the run, or leave the step out");
        }

        if (verdict.Value <= Verdict.Pass || others.Value == OtherSteps.Any || counting.Exists(step => step.State is null || step.Index is not null)) return;
        var most = others.Value == OtherSteps.PassOrNotReached ? Verdict.Inconclusive : Verdict.Pass;
        if (counting.Select(Counts).Append(most).Max() >= verdict.Value) return;
        report.Add(ExpectedCodes.Contradiction, verdict.Place, $"the run is to be {verdict.Value.Word()}, and no step is", "list under  steps  the step that brings it about, or write  others: any");
    }

    /// <summary>What a step brings into the roll-up; null: nothing, or nothing is said.</summary>
    private static Verdict? Counts(ExpectedStep step) => step.State?.Value switch
    {
        StepState.Pass => Verdict.Pass,
        StepState.Inconclusive or StepState.NotReached => Verdict.Inconclusive,
        StepState.Fail => Verdict.Fail,
        StepState.Error => Verdict.Error,
        _ => null,
    };
}
