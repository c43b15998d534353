using EolSequencer.Engine.Tests.Kit;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;
using static EolSequencer.Engine.Tests.Kit.Channels;

namespace EolSequencer.Engine.Tests.Running;

/// <summary>What happens after a step that did not pass, and that <c>always</c> leaves the vehicle safe whatever happened.</summary>
public class FlowTests
{
    private readonly Bench _bench = new();

    private Step Good(string id) => Steps.Read(id, Voltage, Steps.Volts(12m, 13m));

    private Step Bad(string id) => Steps.Read(id, Voltage, Steps.Volts(1m, 2m));

    public FlowTests() => _bench.Bus.With("voltage", _ => Volt(12.5m));

    [Fact]
    public void On_fail_continue_goes_on()
    {
        Assert.Equal(Verdict.Fail, _bench.Run(Bad("a"), Good("b")));
        Assert.Equal(new RollUp(0, 1, 0, 1, 0), _bench.Result!.RollUp);
    }

    [Fact]
    public void On_fail_stop_leaves_the_rest_unreached_and_runs_always()
    {
        var sequence = Bench.Sequence(Bad("a") with { OnFail = OnFail.Stop }, Good("b")) with { Always = [Steps.Set("quiet", "horn", false)] };
        _bench.Run(sequence);
        Assert.Equal(["horn=no"], _bench.Bus.Acts);
        Assert.Equal(["b"], _bench.Journal.Events.OfType<RunEnded>().Single().NotReached);
        Assert.Equal(new RollUp(1, 0, 1, 1, 0), _bench.Result!.RollUp);
        Assert.False(_bench.Result.Interrupted);
    }

    [Fact]
    public void Retry_runs_up_to_two_further_attempts_and_the_last_counts()
    {
        var reads = 0;
        _bench.Bus.With("voltage", _ => ++reads < 3 ? Volt(1m) : Volt(12.5m));
        Assert.Equal(Verdict.Pass, _bench.Run(Good("a") with { Retry = Steps.Retry(2) }));
        Assert.Equal([(1, Verdict.Fail), (2, Verdict.Fail), (3, Verdict.Pass)], _bench.Judged.Select(j => (j.Attempt, j.Measured)));
        Assert.Equal(new RollUp(0, 1, 0, 0, 0), _bench.Result!.RollUp);
    }

    [Fact]
    public void A_group_is_repeated_as_a_whole()
    {
        var reads = 0;
        _bench.Bus.With("voltage", _ => ++reads < 2 ? Volt(1m) : Volt(12.5m));
        Assert.Equal(Verdict.Pass, _bench.Run(Steps.Group("g", Good("a"), Steps.Wait("w", 1)) with { Retry = Steps.Retry(1) }));
        Assert.Equal(["g.a", "g.w", "g.a", "g.w"], _bench.Judged.Select(j => j.Step));
    }

    [Fact]
    public void On_fail_ask_lets_a_person_decide_three_times_at_most()
    {
        for (var times = 0; times < 4; times++) _bench.Operator.Answers("a?", new Answer.Again());
        _bench.Run(Bad("a") with { OnFail = OnFail.Ask }, Good("b"));
        Assert.Equal(4, _bench.Judged.Count(j => j.Step == "a"));
        Assert.Equal(Verdict.Pass, _bench.Judged.Last().Counted);
    }

    [Fact]
    public void On_fail_ask_can_stop_the_run()
    {
        _bench.Operator.Answers("a?", new Answer.Stop("no sense in going on"));
        _bench.Run(Bad("a") with { OnFail = OnFail.Ask }, Good("b"));
        Assert.True(_bench.Result!.Interrupted);
        Assert.Equal("no sense in going on", _bench.Journal.Events.OfType<Stopped>().Single().Reason);
    }

    [Fact]
    public void Only_if_false_is_not_needed_and_stands_in_no_number()
    {
        var never = Expression(ValueShape.Truth, "false", [], [], _ => TruthValue.No);
        _bench.Run(Good("a") with { OnlyIf = never }, Good("b"));
        Assert.Equal(new RollUp(0, 1, 0, 0, 0), _bench.Result!.RollUp);
        Assert.Equal("a", _bench.Journal.Events.OfType<NotNeeded>().Single().Step);
    }

    [Fact]
    public void When_false_is_not_applicable_and_stands_in_the_first_event()
    {
        var never = Expression(ValueShape.Truth, "false", [], [], _ => TruthValue.No);
        _bench.Run(Steps.Group("g", Good("a"), Good("c")) with { When = never }, Good("b"));
        Assert.Equal(["g.a", "g.c"], ((RunBegun)_bench.Journal.Events[0]).NotApplicable);
        Assert.Equal(new RollUp(0, 1, 0, 0, 0), _bench.Result!.RollUp);
    }

    [Fact]
    public void A_lost_group_condition_with_else_stop_ends_the_run_and_always_runs()
    {
        _bench.Bus.With("gate", at => TruthValue.Of(at < TimeSpan.FromSeconds(2)));
        var group = Steps.Group("rollers", Steps.Wait("w", 5), Good("a")) with { Require = new(True(Gate), true) };
        _bench.Run(Bench.Sequence(group, Good("b")) with { Always = [Steps.Set("quiet", "horn", false)] });
        Assert.Equal(["rollers.a", "b"], _bench.Journal.Events.OfType<RunEnded>().Single().NotReached);
        Assert.Equal("lost: bus.gate", _bench.Judged.First().Detail);
        Assert.Equal(["horn=no"], _bench.Bus.Acts);
        Assert.Equal("lost: bus.gate", _bench.Journal.Events.OfType<Stopped>().Single().Reason);
        Assert.False(_bench.Result!.Interrupted);
    }

    [Fact]
    public void A_lost_condition_with_else_stop_ends_the_other_branches_too_and_is_no_interruption()
    {
        _bench.Bus.With("gate", at => TruthValue.Of(at < TimeSpan.FromSeconds(2)));
        var guarded = Steps.Group("rollers", Steps.Wait("w", 5)) with { Require = new(True(Gate), true) };
        _bench.Run(Steps.Together([guarded], [Steps.Wait("long", 60), Good("a")]));
        Assert.InRange(_bench.Journal.Events[^1].At, 2_000_000, 2_500_000);
        Assert.Equal("lost: bus.gate", _bench.Journal.Events.OfType<Stopped>().Single().Reason);
        Assert.False(_bench.Result!.Interrupted);
    }

    [Fact]
    public void A_step_condition_with_else_stop_says_why_the_run_ended()
    {
        _bench.Bus.With("gate", at => TruthValue.Of(at < TimeSpan.FromSeconds(2)));
        _bench.Run(Steps.Wait("w", 5) with { Require = new(True(Gate), true) }, Good("a"));
        Assert.Equal("lost: bus.gate", _bench.Journal.Events.OfType<Stopped>().Single().Reason);
        Assert.False(_bench.Result!.Interrupted);
    }

    [Fact]
    public void On_fail_stop_names_the_step_that_stopped_the_run()
    {
        _bench.Run(Bad("a") with { OnFail = OnFail.Stop }, Good("b"));
        Assert.Equal("'a' did not pass, which stops the run", _bench.Journal.Events.OfType<Stopped>().Single().Reason);
        Assert.False(_bench.Result!.Interrupted);
    }

    [Fact]
    public void A_lost_group_condition_without_else_leaves_the_group_and_goes_on()
    {
        _bench.Bus.With("gate", at => TruthValue.Of(at < TimeSpan.FromSeconds(2)));
        _bench.Run(Steps.Group("rollers", Steps.Wait("w", 5), Good("a")) with { Require = new(True(Gate), false) }, Good("b"));
        Assert.Equal(["rollers.a"], _bench.Journal.Events.OfType<RunEnded>().Single().NotReached);
        Assert.Equal(Verdict.Pass, _bench.Judged.Last().Counted);
    }

    [Fact]
    public void A_stop_from_outside_interrupts_and_still_leaves_the_vehicle_safe()
    {
        using var stop = new CancellationTokenSource(TimeSpan.FromSeconds(3), _bench.Time);
        _bench.Run(Bench.Sequence(Steps.Wait("w", 60), Good("b")) with { Always = [Steps.Set("quiet", "horn", false)] }, stop.Token);
        Assert.True(_bench.Result!.Interrupted);
        Assert.Equal(["horn=no"], _bench.Bus.Acts);
        Assert.Equal(Verdict.Inconclusive, _bench.Result.RollUp.Verdict);
        Assert.IsType<RunEnded>(_bench.Journal.Events.Last());
    }

    [Fact]
    public void A_stop_while_always_runs_comes_too_late_to_interrupt_anything()
    {
        using var stop = new CancellationTokenSource(TimeSpan.FromSeconds(3), _bench.Time);
        _bench.Run(Bench.Sequence(Good("a")) with { Always = [Steps.Wait("settle", 4)] }, stop.Token);
        Assert.False(_bench.Result!.Interrupted);
        Assert.Equal(Verdict.Pass, _bench.Result.RollUp.Verdict);
    }

    [Fact]
    public void A_stop_at_the_moment_at_which_the_last_step_passes_releases_nothing()
    {
        using var stop = new CancellationTokenSource();
        _bench.Journal = new ListJournal { Kept = next => { if (next is Judged) stop.Cancel(); } };
        var told = "";
        var passed = Expression(ValueShape.Truth, "passed", [], [], scope => TruthValue.Of((told = scope.RunVerdict.Word()) == "pass"));
        _bench.Run(Bench.Sequence(Good("a")) with { AfterVerdict = [Steps.Set("tell", "horn", true) with { OnlyIf = passed }] }, stop.Token);
        Assert.True(_bench.Result!.Interrupted);
        Assert.Equal(("inconclusive", new RollUp(0, 1, 1, 0, 0)), (told, _bench.Result.RollUp));
        Assert.Empty(_bench.Bus.Acts);
    }

    [Fact]
    public void Always_goes_on_after_a_step_of_it_fails_and_counts()
    {
        _bench.Bus.Missing("clear", MissingCause.Refused);
        var clear = Steps.Of("clear", new StepAction.Do("bus", BusKind.Actions["clear"], null, []), null);
        _bench.Run(Bench.Sequence(Good("a")) with { Always = [clear with { OnFail = OnFail.Stop }, Steps.Set("quiet", "horn", false)] });
        Assert.Equal(["clear=", "horn=no"], _bench.Bus.Acts);
        Assert.Equal(Verdict.Error, _bench.Result!.RollUp.Verdict);
    }

    [Fact]
    public void A_step_of_always_that_hangs_ends_after_five_seconds()
    {
        _bench.Bus.Delay = TimeSpan.FromHours(1);
        var quiet = Steps.Of("quiet", new StepAction.SetTo("bus", BusKind.Actions["horn"], null, new Operand.Constant(TruthValue.No)), null);
        _bench.Run(Bench.Sequence(Steps.Wait("w", 1)) with { Always = [quiet] });
        Assert.Equal((MissingCause.Silent, 5_000_000), (_bench.Judged.Last().Cause, _bench.Judged.Last().Took));
    }

    [Fact]
    public void A_record_that_cannot_be_kept_ends_the_run_as_an_error_and_keeps_what_was_written()
    {
        _bench.Journal = new ListJournal { FailAt = 4 };
        var result = _bench.Run(Bench.Sequence(Good("a"), Good("b"), Good("c"), Good("d")) with { Always = [Steps.Set("quiet", "horn", false)] });
        Assert.Equal((Verdict.Error, "disk full"), (result, _bench.Result!.Fault));
        Assert.Equal(["a", "b"], _bench.Judged.Select(j => j.Step));
        Assert.Equal(["horn=no"], _bench.Bus.Acts);
    }

    [Fact]
    public void Only_the_steps_asked_for_are_run()
    {
        _bench.Run(Bench.Sequence(Steps.Group("g", Good("a"), Good("b")), Good("c")), only: ["g.b"]);
        Assert.Equal(["g.b"], _bench.Judged.Select(j => j.Step));
    }
}
