using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Rehearsal.Replay;

namespace EolSequencer.Cli.Replaying;

/// <summary>What came out otherwise, for programs.</summary>
internal static class ReplayJson
{
    /// <param name="trouble">What is not as it was written; null when all is.</param>
    public static object Of(ReplayedRun run, CheckedSequence sequence, string? trouble) => new
    {
        run = run.Begun.Run,
        vin = run.Begun.Order.Vin.Text,
        mode = run.Begun.Mode.Word(),
        unverified = trouble,
        then = new { sequence = run.Begun.Sequence, revision = run.Begun.Revision, verdict = run.Was.Verdict.Word(), numbers = Numbers(run.Was), firstTimeThrough = run.WasFirstTimeThrough },
        now = new { sequence = sequence.Id, revision = sequence.Revision, verdict = run.Verdict?.Word(), atLeast = run.Verdict is null ? run.Is.Verdict.Word() : null, numbers = Numbers(run.Is), undecidable = run.Undecidable, firstTimeThrough = run.IsFirstTimeThrough },
        steps = run.Steps.Length,
        changed = run.Steps.Where(step => step.IsChanged).Select(Step),
        undecidable = run.Steps.Where(step => step.IsUndecidable).Select(step => new { step = step.Step, then = step.Was.Word, why = step.Why }),
    };

    private static object Step(ReplayedStep step) => new
    {
        step = step.Step,
        then = step.Was.Word,
        now = step.Is.Word,
        why = step.Why,
        criteria = CriterionChange.In(step).Select(one => new
        {
            of = one.Of.Length == 0 ? null : one.Of,
            value = one.Value,
            windowThen = Window(one.Was),
            windowNow = Window(one.Is),
            then = one.Was?.Verdict.Word(),
            now = one.Is?.Verdict.Word(),
        }),
    };

    private static string? Window(CriterionResult? one) => CriterionChange.Window(one) is { Length: > 0 } text ? text : null;

    private static object Numbers(RollUp numbers) => new { none = numbers.None, pass = numbers.Pass, inconclusive = numbers.Inconclusive, fail = numbers.Fail, error = numbers.Error };
}
