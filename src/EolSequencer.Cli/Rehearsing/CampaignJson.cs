using EolSequencer.Model.Judging;
using EolSequencer.Rehearsal.Campaigns;

namespace EolSequencer.Cli.Rehearsing;

/// <summary>What a campaign has shown, for programs.</summary>
internal static class CampaignJson
{
    public static object Of(CampaignFindings findings, RunsAgain again) => new
    {
        campaign = again.Campaign,
        plant = findings.Head.Plant,
        station = findings.Head.Station,
        sequence = findings.Head.Sequence,
        revision = findings.Head.Revision,
        program = findings.Head.Program,
        settings = findings.Head.Settings,
        runs = findings.Head.Jobs,
        done = findings.Done,
        good = findings.IsGood,
        cycleTimeSeconds = findings.Head.CycleMicroseconds / 1e6,
        times = findings.Times is { } times ? new { runs = times.Runs, p50Seconds = times.Median, p95Seconds = times.P95, longestSeconds = times.Longest } : null,
        troubles = findings.Troubles,
        falseAlarms = findings.FalseAlarms.Select(alarm => new
        {
            options = alarm.Run.Options,
            seed = alarm.Run.Seed,
            verdict = alarm.Verdict.Word(),
            steps = alarm.Steps.Select(step => new { step = step.Step, counted = step.Counted.Word() }),
            again = again.CommandFor(alarm.Run),
        }),
        faults = findings.Faults.Select(fault => new
        {
            fault = fault.Text,
            point = fault.Point,
            kind = fault.Kind,
            @class = fault.Class,
            effect = fault.Effect,
            ofPerson = fault.IsOfPerson,
            runs = fault.Runs,
            caught = fault.Caught,
            firstStep = fault.FirstStep,
            soonestSeconds = fault.Soonest,
            latestSeconds = fault.Latest,
            escapes = fault.Escapes.Select(run => new { options = run.Options, seed = run.Seed, again = again.CommandFor(run) }),
        }),
        steps = findings.Steps.Select(step => new { step = step.Id, @class = step.Class, judged = step.IsJudged, faults = step.Faults, vehicleFaults = step.VehicleFaults }),
        matrix = findings.Catches.OrderBy(pair => pair.Key.Fault, StringComparer.Ordinal).ThenBy(pair => pair.Key.Step, StringComparer.Ordinal).Select(pair => new
        {
            fault = pair.Key.Fault,
            step = pair.Key.Step,
            runs = pair.Value.Runs,
            worst = pair.Value.Worst.Word(),
            first = pair.Value.IsFirst,
        }),
        pairRuns = findings.PairRuns,
        masked = findings.Masked.Select(pair => new { first = pair.First, second = pair.Second, again = again.CommandFor(pair.Run) }),
        flaky = findings.Flaky.Select(step => new { step = step.Step, options = step.Options, worse = step.Worse, runs = step.Runs }),
        margins = findings.Margins.Select(margin => new
        {
            step = margin.Step,
            options = margin.Options,
            runs = margin.Runs,
            mean = margin.Mean,
            standardDeviation = margin.Deviation,
            low = margin.Low,
            high = margin.High,
            distance = margin.Distance,
            outside = margin.Outside,
        }),
    };
}
