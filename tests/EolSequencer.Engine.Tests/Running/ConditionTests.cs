using EolSequencer.Engine.Tests.Kit;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Values;
using static EolSequencer.Engine.Tests.Kit.Channels;

namespace EolSequencer.Engine.Tests.Running;

/// <summary>What a device confirms must have happened after the step began, and for as long as it says.</summary>
public class ConditionTests
{
    private readonly Bench _bench = new();

    private static Func<TimeSpan, Value?> Between(double from, double to) =>
        at => TruthValue.Of(at >= TimeSpan.FromSeconds(from) && at < TimeSpan.FromSeconds(to));

    [Fact]
    public void A_prompt_ends_at_the_stamp_of_the_reading_that_confirms_it()
    {
        _bench.Bus.With("pedal", Between(2.005, 9));
        Assert.Equal(Verdict.Pass, _bench.Run(Steps.AskUntil("press", True(Pedal))));
        Assert.Equal(2_020_000, _bench.Judged.Single().Took);
    }

    [Fact]
    public void A_switch_that_is_stuck_on_does_not_pass()
    {
        _bench.Bus.With("pedal", _ => TruthValue.Yes);
        Assert.Equal(Verdict.Fail, _bench.Run(Steps.AskUntil("press", True(Pedal))));
        Assert.Equal("was true from the start and was not let go within 8 s", _bench.Judged.Single().Detail);
    }

    [Fact]
    public void Without_edge_the_level_is_enough()
    {
        _bench.Bus.With("pedal", _ => TruthValue.Yes);
        Assert.Equal(Verdict.Pass, _bench.Run(Steps.AskUntil("press", True(Pedal), edge: false)));
    }

    [Fact]
    public void A_condition_that_does_not_come_true_is_a_fail_at_the_limit()
    {
        _bench.Bus.With("pedal", _ => TruthValue.No);
        Assert.Equal(Verdict.Fail, _bench.Run(Steps.AskUntil("press", True(Pedal))));
        Assert.Equal(8_000_000, _bench.Judged.Single().Took);
    }

    [Fact]
    public void A_condition_that_nobody_can_tell_is_an_error()
    {
        _bench.Bus.Missing("pedal", MissingCause.Stale);
        Assert.Equal(Verdict.Error, _bench.Run(Steps.AskUntil("press", True(Pedal))));
        Assert.Equal(MissingCause.Stale, _bench.Judged.Single().Cause);
    }

    [Fact]
    public void Edges_are_counted_from_the_first_reading_of_the_step()
    {
        _bench.Bus.With("key", at => TruthValue.Of(at.TotalSeconds % 2 < 1));
        var flashes = Expression(ValueShape.Truth, "edges(bus.key) >= 4", [Key], [], scope => TruthValue.Of(scope.Edges(0) >= 4));
        Assert.Equal(Verdict.Pass, _bench.Run(Steps.Await("flash", flashes, within: 10)));
        Assert.Equal(4_000_000, _bench.Judged.Single().Took);
    }

    [Theory, Trait("case", "TMR-02")]
    [InlineData(100)]
    [InlineData(33)]
    public void Lasting_never_ends_before_its_time(int milliseconds)
    {
        _bench.Bus.With("key", at => TruthValue.Of(at >= TimeSpan.FromMilliseconds(407)));
        _bench.Run(Steps.Await("steady", True(Key), within: 10) with { Lasting = Steps.Time(milliseconds / 1000m) });
        var firstSeen = 420_000; // polled every 20 ms
        Assert.Equal(firstSeen + (milliseconds * 1000), _bench.Judged.Single().Took);
    }

    [Fact, Trait("case", "TMR-01")]
    public void A_clock_that_is_set_during_a_step_changes_neither_its_time_nor_its_limit()
    {
        _bench.Clock = new JumpingClock(_bench.Time, (0.5, -3600), (1.5, 7200));
        _bench.Bus.With("key", at => TruthValue.Of(at >= TimeSpan.FromSeconds(2)));
        Assert.Equal(Verdict.Pass, _bench.Run(Steps.Await("steady", True(Key), within: 5)));
        Assert.Equal(2_000_000, _bench.Judged.Single().Took);
        Assert.Equal(2_000_000, _bench.Journal.Events[^1].At);
        var set = Assert.Single(_bench.Journal.Events.OfType<EolSequencer.Model.Events.ClockSet>());
        Assert.Equal((2_000_000, TimeSpan.FromSeconds(3600)), (set.At, set.After - set.Before));
    }

    [Theory, Trait("case", "TMR-01")]
    [InlineData(2.0, 0)]
    [InlineData(2.1, 1)]
    [InlineData(-2.0, 0)]
    [InlineData(-2.1, 1)]
    public void A_small_correction_of_the_clock_is_no_event(double seconds, int events)
    {
        _bench.Clock = new JumpingClock(_bench.Time, (0.5, seconds));
        _bench.Run(Steps.Wait("w", 1), Steps.Wait("x", 1));
        Assert.Equal(events, _bench.Journal.Events.Count(next => next is EolSequencer.Model.Events.ClockSet));
        Assert.Equal(Enumerable.Range(1, _bench.Journal.Events.Count), _bench.Journal.Events.Select(next => next.N));
    }

    [Fact]
    public void Lasting_begins_anew_when_the_condition_breaks()
    {
        _bench.Bus.With("key", at => TruthValue.Of(at.TotalSeconds is (>= 1 and < 2) or >= 3));
        var step = Steps.Await("steady", True(Key), within: 10) with { Lasting = Steps.Time(1.5m) };
        Assert.Equal(Verdict.Pass, _bench.Run(step));
        Assert.Equal(4_500_000, _bench.Judged.Single().Took);
    }

    [Fact]
    public void A_condition_that_does_not_last_until_the_limit_is_a_fail()
    {
        _bench.Bus.With("key", Between(4, 99));
        var step = Steps.Await("steady", True(Key), within: 5) with { Lasting = Steps.Time(1.5m) };
        Assert.Equal(Verdict.Fail, _bench.Run(step));
        Assert.Equal("did not last 1.5 s", _bench.Judged.Single().Detail);
    }

    [Theory]
    [InlineData("1.9", Verdict.Fail)]
    [InlineData("2.1", Verdict.Pass)]
    public void Takes_is_judged_from_the_first_moment_of_since(string most, Verdict verdict)
    {
        _bench.Bus.With("key", Between(1, 99)).With("pedal", Between(3, 99));
        var step = Steps.AskUntil("start", True(Pedal)) with
        {
            Since = True(Key),
            Takes = Steps.Window(null, decimal.Parse(most, System.Globalization.CultureInfo.InvariantCulture), "s"),
        };
        Assert.Equal(verdict, _bench.Run(step));
        Assert.Equal("2", _bench.Judged.Single().Criteria.Single().Value);
    }

    [Fact]
    public void Takes_that_is_record_only_does_not_count()
    {
        _bench.Bus.With("pedal", Between(3, 99));
        var step = Steps.AskUntil("press", True(Pedal)) with { Takes = Steps.Window(null, 1m, "s"), TakesIsRecordOnly = true };
        Assert.Equal(Verdict.Pass, _bench.Run(step));
        Assert.Equal(Verdict.Fail, _bench.Judged.Single().Measured);
    }

    [Fact]
    public void A_person_may_pass_over_a_prompt_and_that_is_inconclusive()
    {
        _bench.Bus.With("pedal", _ => TruthValue.No);
        _bench.Operator.Answers("press", new Answer.PassedOver("pedal box missing") { Person = "lead" });
        Assert.Equal(Verdict.Inconclusive, _bench.Run(Steps.AskUntil("press", True(Pedal)) with { Retry = Steps.Retry(2) }));
        Assert.Single(_bench.Journal.Events.OfType<PassedOver>());
        Assert.Single(_bench.Judged);
    }

    [Fact]
    public void A_required_condition_that_is_lost_makes_the_step_inconclusive()
    {
        _bench.Bus.With("gate", Between(0, 2)).With("pedal", Between(3, 99));
        var step = Steps.AskUntil("press", True(Pedal)) with { Require = new(True(Gate), false) };
        Assert.Equal(Verdict.Inconclusive, _bench.Run(step));
        Assert.Equal("lost: bus.gate", _bench.Judged.Single().Detail);
    }

    [Fact]
    public void A_reading_taken_while_the_required_condition_is_false_does_not_count()
    {
        _bench.Bus.With("gate", _ => TruthValue.No).With("voltage", _ => Volt(12.5m));
        var step = Steps.Read("battery", Voltage, Steps.Volts(12m, 13m)) with { Require = new(True(Gate), false) };
        Assert.Equal(Verdict.Inconclusive, _bench.Run(step));
    }
}
