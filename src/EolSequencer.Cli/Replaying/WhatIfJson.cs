using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Rehearsal.Replay.WhatIf;
using EolSequencer.Statistics.Proportions;

namespace EolSequencer.Cli.Replaying;

/// <summary>What comes out otherwise over many runs, for programs.</summary>
internal static class WhatIfJson
{
    /// <param name="trouble">What is not as it was written; null when all is.</param>
    public static object Of(WhatIfResult result, CheckedSequence sequence, WhatIfChoices which, string? trouble) => new
    {
        from = which.From,
        to = which.To,
        mode = which.Rehearsals ? "rehearsal" : "production",
        unverified = trouble,
        unverifiedRuns = result.Troubled == 0 ? (long?)null : result.Troubled,
        sequence = sequence.Id,
        revision = sequence.Revision,
        runs = result.Runs,
        stepsJudged = result.Steps,
        leftOut = result.LeftOut,
        steps = result.ByStep.Select(step => new
        {
            step = step.Key,
            then = Numbers(step.Value.Was),
            now = Numbers(step.Value.Is),
            changed = step.Value.Changed,
            undecidable = step.Value.Undecidable,
            why = step.Value.Why,
        }),
        changed = result.Changed.Select(run => new { run = run.Run, vin = run.Vin, then = run.Was.Word(), now = run.Is.Word(), isFinal = run.IsFinal, steps = run.Steps, undecidable = run.Undecidable }),
        firstTimeThrough = First(result.FirstTimeThrough),
    };

    private static object First(FirstTimeThrough first) => new
    {
        vehicles = first.Vehicles,
        undecidable = first.Undecidable,
        gained = first.Gained,
        lost = first.Lost,
        then = Share(first.ShareThen),
        nowLeast = Share(first.LeastNow),
        nowMost = Share(first.MostNow),
        changeLeast = Share(first.LeastChange),
        changeMost = Share(first.MostChange),
        confidence = 0.95,
    };

    private static object? Share(ProportionInterval? share) => share is null ? null : new { estimate = share.Estimate, low = share.Low, high = share.High };

    private static object Numbers(Func<Verdict, long> of) => new
    {
        none = of(Verdict.None),
        pass = of(Verdict.Pass),
        inconclusive = of(Verdict.Inconclusive),
        fail = of(Verdict.Fail),
        error = of(Verdict.Error),
    };
}
