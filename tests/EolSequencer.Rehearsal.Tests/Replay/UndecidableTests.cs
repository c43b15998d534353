using EolSequencer.Model.Events;
using EolSequencer.Rehearsal.Replay;
using EolSequencer.Rehearsal.Tests.Kit;

namespace EolSequencer.Rehearsal.Tests.Replay;

/// <summary>What the record does not decide is never guessed: it is named, with the reason.</summary>
public sealed class UndecidableTests
{
    private static readonly IReadOnlyList<RunEvent> Run = SmallPlant.Rehearse();

    [Theory]
    [InlineData("hood", "until: bus.hood_open", "until: bus.hood_open || bus.ignition", "its until reads otherwise")]
    [InlineData("hood", "until: bus.hood_open", "until: bus.hood_open\n        lasting: 200 ms", "its lasting is otherwise")]
    [InlineData("hood", "until: bus.hood_open", "until: bus.hood_open\n        within: 1 ms", "its condition was met later than the limit is now; whether it was false or unknown then was not recorded")]
    [InlineData("hood", "takes: .. 20 s", "takes: .. 20 s\n        since: bus.ignition", "the moment from which its time counts (since) was not recorded")]
    [InlineData("plates", "The plates show the same number.", "The plates are there.", "its question reads otherwise")]
    [InlineData("coding", "  - group: body\n", "  - group: body\n    require: bus.gateway_awake\n", "what must hold meanwhile (require) reads otherwise")]
    [InlineData("extra", "results.voltage.verdict == \"pass\"", "results.voltage.verdict == \"pass\" && bus.gateway_awake", "whether it is needed (only-if) reads otherwise")]
    [InlineData("again", "step: again, read: meter.battery_voltage", "step: again, read: meter.battery_ripple", "its channel is otherwise")]
    [InlineData("settled", "for: 2 s, every: 200 ms", "for: 3 s, every: 200 ms", "its for is otherwise")]
    [InlineData("live", "meter.battery_voltage.V * 2", "meter.battery_voltage.V * 3", "it computes otherwise, and its reading of meter.battery_voltage was recorded as bytes only")]
    [InlineData("still", "channels: [bus.wheel_speed], every: 100 ms", "channels: [bus.wheel_speed], every: 50 ms", "'calm' keeps bus.wheel_speed[fl] otherwise")]
    [InlineData("still", "watched, wait: 1 s }", "watched, read: bus.ambient }", null)]
    [InlineData("added", "  - group: calm\n", "  - { step: added, read: bus.ambient, expect: 0 .. 40 °C }\n  - group: calm\n", "it was added, so nothing was recorded")]
    [InlineData("again", "expect: 12.0 .. 13.0 V, on-fail: stop", "expect: 15 .. 16 V, retry: 1", "it would have been tried again")]
    [InlineData("again", "expect: 12.0 .. 13.0 V, on-fail: stop", "expect: 15 .. 16 V, on-fail: ask", "a person would have been asked what to do")]
    [InlineData("coding", "  - group: body\n", "  - group: body\n    retry: 1\n", "its group is tried again on what its steps come to")]
    public void A_change_that_the_record_cannot_decide_is_told_with_its_reason(string step, string old, string young, string? why)
    {
        var replayed = Step(RunReplay.Of(SmallPlant.First, SmallPlant.With(old, young), Run), step);

        Assert.Equal((why is not null, why), (replayed.IsUndecidable, replayed.Why));
    }

    [Fact]
    public void A_step_that_applies_only_now_has_nothing_recorded()
    {
        var old = SmallPlant.With("when: vehicle.doors == \"single\"", "when: vehicle.doors == \"double\"");

        var replayed = Step(RunReplay.Of(old, SmallPlant.First, SmallPlant.Rehearse(old, 0, 1)), "all_doors");

        Assert.Equal(("not applicable", "it did not apply then, so nothing was recorded"), (replayed.Was.Word, replayed.Why));
    }

    [Fact]
    public void A_step_that_was_not_needed_then_has_nothing_recorded()
    {
        var old = SmallPlant.With("results.voltage.verdict == \"pass\"", "results.voltage.verdict == \"fail\"");

        var replayed = Step(RunReplay.Of(old, SmallPlant.First, SmallPlant.Rehearse(old, 0, 1)), "extra");

        Assert.Equal(("not needed", "it was not needed then, so nothing was recorded"), (replayed.Was.Word, replayed.Why));
    }

    [Fact]
    public void A_run_that_would_have_gone_on_leaves_open_what_was_not_reached()
    {
        var old = SmallPlant.With("expect: 12.0 .. 13.0 V, on-fail: stop", "expect: 15 .. 16 V, on-fail: stop");

        var run = RunReplay.Of(old, SmallPlant.First, SmallPlant.Rehearse(old, 0, 1));

        Assert.Equal("pass", Step(run, "again").Is.Word);
        Assert.Equal(("not reached", "it was not reached then: 'supply.again' stopped the run"), (Step(run, "still").Was.Word, Step(run, "still").Why));
        Assert.Null(run.IsFirstTimeThrough);
        Assert.Null(run.Verdict);
    }

    [Fact]
    public void A_group_that_was_tried_again_comes_out_as_recorded_until_one_of_its_attempts_counts_otherwise()
    {
        var old = SmallPlant.With("  - group: body\n", "  - group: body\n    retry: 1\n");
        var run = SmallPlant.Rehearse(old, 0, 1);
        Assert.Equal(2, run.OfType<Judged>().Count(judged => judged.Step == "body.coding"));

        Assert.All(RunReplay.Of(old, old, run).Steps, step => Assert.True(step.Was.IsSame(step.Is), step.Step));

        var other = SmallPlant.With("  - group: body\n", "  - group: body\n    retry: 1\n", "equals (order.coding)", "matches /0+/");
        var replayed = RunReplay.Of(old, other, run);
        Assert.Equal("its group is tried again on what its steps come to", Step(replayed, "coding").Why);
        Assert.False(Step(replayed, "still").IsUndecidable);
    }

    [Fact]
    public void A_longer_limit_leaves_open_what_was_not_seen_in_time()
    {
        var run = SmallPlant.Rehearse(0, 1, "hood_contact_open");
        var longer = SmallPlant.With("until: bus.hood_open", "until: bus.hood_open\n        within: 40 s");

        Assert.Equal("its condition was not met in time, and the limit is longer now", Step(RunReplay.Of(SmallPlant.First, longer, run), "hood").Why);
    }

    [Fact]
    public void What_builds_on_something_undecidable_is_undecidable()
    {
        var run = RunReplay.Of(SmallPlant.First, SmallPlant.With("step: voltage, read: meter.battery_voltage", "step: voltage, read: meter.battery_ripple"), Run);

        Assert.Equal("it builds on 'supply.voltage', which is undecidable", Step(run, "margin").Why);
        Assert.Equal("it builds on 'supply.voltage', which is undecidable", Step(run, "extra").Why);
        Assert.False(Step(run, "settled").IsUndecidable);
    }

    private static ReplayedStep Step(ReplayedRun run, string own) => run.Steps.Single(step => step.Step == own || step.Step.EndsWith("." + own, StringComparison.Ordinal));
}
