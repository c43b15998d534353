using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Rehearsal.Replay;
using EolSequencer.Rehearsal.Tests.Kit;

namespace EolSequencer.Rehearsal.Tests.Replay;

/// <summary>Every change of judging that the record decides comes out as a run with that revision would have judged.</summary>
public sealed class DecidableTests
{
    private static readonly IReadOnlyList<RunEvent> Run = SmallPlant.Rehearse();

    [Theory]
    [InlineData("voltage", "read: meter.battery_voltage, expect: 12.0 .. 13.0 V, uncertainty", "read: meter.battery_voltage, expect: 12.9 .. 13.0 V, uncertainty", "fail")]
    [InlineData("voltage", "uncertainty: 0.05 V", "uncertainty: 500 mV, decision: guarded", "inconclusive")]
    [InlineData("voltage", "uncertainty: 0.05 V", "decision: guarded, uncertainty: 0.05 V", "pass")]
    [InlineData("again", "expect: 12.0 .. 13.0 V, on-fail: stop", "expect: 12000 .. 13000 mV, on-fail: stop", "pass")]
    [InlineData("settled", "reduce: min, expect: at least 12 V", "reduce: range, expect: at least 12 V", "fail")]
    [InlineData("settled", "reduce: min, expect: at least 12 V", "reduce: mean, expect: at most 12 V", "fail")]
    [InlineData("settled", "reduce: min, expect: at least 12 V", "reduce: count, expect: equals 10", "pass")]
    [InlineData("margin", "results.voltage.V - 12, unit: V, expect: 0 .. 1 V", "results.voltage.V - 13, unit: V, expect: 0 .. 1 V", "fail")]
    [InlineData("margin", "results.voltage.V - 12, unit: V", "results.settled.V - 12, unit: V", "pass")]
    [InlineData("live", "expect: 20 .. 30 V", "expect: 20 .. 21 V", "fail")]
    [InlineData("extra", "only-if: results.voltage.verdict == \"pass\"", "only-if: results.voltage.verdict == \"fail\"", "not needed")]
    [InlineData("extra", "expect: 0 .. 40 °C", "expect: 0 .. 1 °C, record-only: true", "none")]
    [InlineData("coding", "equals (order.coding)", "matches /X.*/", "fail")]
    [InlineData("still", "at most 1 km/h", "at least 1 km/h", "fail")]
    [InlineData("still", "trace.calm.bus.wheel_speed[\"fl\"].max", "trace.calm.bus.wheel_speed[\"fr\"].min", "pass")]
    public void What_is_judged_otherwise_gets_another_verdict(string step, string old, string young, string verdict) =>
        Assert.Equal(verdict, Step(RunReplay.Of(SmallPlant.First, SmallPlant.With(old, young), Run), step).Is.Word);

    [Theory]
    [InlineData("takes: .. 20 s", "takes: .. 1 ms", "fail")]
    [InlineData("takes: .. 20 s", "takes: 0 s .. 20 s", "pass")]
    public void The_time_taken_is_judged_again(string old, string young, string verdict) =>
        Assert.Equal(verdict, Step(RunReplay.Of(SmallPlant.First, SmallPlant.With(old, young), Run), "hood").Is.Word);

    [Fact]
    public void A_time_that_was_not_judged_then_is_the_time_of_the_step()
    {
        var without = SmallPlant.With("        takes: .. 20 s\n", "");
        var run = SmallPlant.Rehearse(without, 0, 1);

        var hood = Step(RunReplay.Of(without, SmallPlant.First, run), "hood");

        var recorded = run.OfType<Judged>().Single(judged => judged.Step == "body.hood");
        Assert.Equal(recorded.Took / 1_000_000m, decimal.Parse(Assert.Single(hood.Is.Criteria).Value!, System.Globalization.CultureInfo.InvariantCulture));
    }

    [Fact]
    public void A_step_that_does_not_apply_any_more_is_left_out_of_the_roll_up()
    {
        var run = RunReplay.Of(SmallPlant.First, SmallPlant.With("when: vehicle.doors == \"single\"", "when: vehicle.doors == \"double\""), Run);

        Assert.Equal((StandingKind.Judged, StandingKind.NotApplicable), (Step(run, "all_doors").Was.Kind, Step(run, "all_doors").Is.Kind));
        Assert.Equal(run.Was.Pass - 1, run.Is.Pass);
        Assert.Equal(0, run.Undecidable);
    }

    [Fact]
    public void A_step_that_was_removed_is_said_to_be()
    {
        var run = RunReplay.Of(SmallPlant.First, SmallPlant.With("      - { step: live, compute: meter.battery_voltage.V * 2, unit: V, expect: 20 .. 30 V }\n", ""), Run);

        Assert.Equal(("not there", "it was removed"), (Step(run, "live").Is.Word, Step(run, "live").Why));
    }

    [Fact]
    public void A_step_that_would_stop_the_run_leaves_the_rest_unreached()
    {
        var run = RunReplay.Of(SmallPlant.First, SmallPlant.With("expect: 12.0 .. 13.0 V, on-fail: stop", "expect: 15 .. 16 V, on-fail: stop"), Run);

        Assert.Equal("fail", Step(run, "again").Is.Word);
        Assert.All(run.Steps.SkipWhile(step => !step.Step.EndsWith(".again", StringComparison.Ordinal)).Skip(1), step => Assert.Equal("not reached", step.Is.Word));
        Assert.Equal((Verdict.Fail, false), (run.Is.Verdict, run.IsFirstTimeThrough));
    }

    /// <summary>The other way to the same answer: a vehicle and its operator do the same in both runs, whatever is judged.</summary>
    [Theory]
    [InlineData("expect: at least 12 V", "expect: at least 13 V")]
    [InlineData("expect: 20 .. 30 V", "expect: 25.3 .. 30 V")]
    [InlineData("results.voltage.V - 12", "results.voltage.V - 12.5")]
    [InlineData("expect: 12.0 .. 13.0 V, uncertainty: 0.05 V", "expect: 12.5 .. 13.0 V, uncertainty: 0.2 V, decision: guarded")]
    public void A_replay_says_what_a_run_with_the_revision_finds(string old, string young)
    {
        var revision = SmallPlant.With(old, young);
        for (ulong seed = 1; seed <= 5; seed++)
        {
            var replayed = RunReplay.Of(SmallPlant.First, revision, SmallPlant.Rehearse(0, seed));
            var found = RunFold.Of(SmallPlant.Rehearse(revision, 0, seed));

            Assert.Equal(found.Results.Select(result => (result.Step, result.Counted)), replayed.Steps.Where(step => step.Is.Kind == StandingKind.Judged).Select(step => (step.Step, step.Is.Counted)));
            Assert.Equal(found.Ended!.RollUp, replayed.Is);
            Assert.Equal(found.Results.SelectMany(result => Values(result.Criteria)), replayed.Steps.SelectMany(step => Values(step.Is.Criteria)));
        }
    }

    /// <summary>What a step left out makes shorter is no matter of judging.</summary>
    private static IEnumerable<CriterionResult> Values(IEnumerable<CriterionResult> criteria) => criteria.Where(one => one.Of != "takes");

    private static ReplayedStep Step(ReplayedRun run, string own) => run.Steps.Single(step => step.Step == own || step.Step.EndsWith("." + own, StringComparison.Ordinal));
}
