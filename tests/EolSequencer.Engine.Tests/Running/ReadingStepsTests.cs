using EolSequencer.Engine.Tests.Kit;
using EolSequencer.Model.Events;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;
using static EolSequencer.Engine.Tests.Kit.Channels;

namespace EolSequencer.Engine.Tests.Running;

/// <summary>A wrong window, unit or cause here would pass a bad vehicle or fail a good one.</summary>
public class ReadingStepsTests
{
    private readonly Bench _bench = new();

    [Theory]
    [InlineData("12.40", Verdict.Pass)]
    [InlineData("12.39", Verdict.Fail)]
    [InlineData("12.90", Verdict.Pass)]
    [InlineData("12.91", Verdict.Fail)]
    public void A_closed_window_decides_at_its_ends(string volts, Verdict verdict)
    {
        _bench.Bus.With("voltage", _ => Volt(decimal.Parse(volts, System.Globalization.CultureInfo.InvariantCulture)));
        Assert.Equal(verdict, _bench.Run(Steps.Read("battery", Voltage, Steps.Volts(12.40m, 12.90m))));
    }

    [Fact]
    public void A_value_is_converted_into_the_unit_of_its_window()
    {
        _bench.Bus.With("voltage", _ => new NumberValue(12500, UnitTable.Required("mV")));
        Assert.Equal(Verdict.Pass, _bench.Run(Steps.Read("battery", Voltage, Steps.Volts(12.40m, 12.90m))));
        Assert.Equal(("12.500", "V"), (_bench.Judged.Single().Criteria[0].Value, _bench.Judged.Single().Criteria[0].Unit));
    }

    [Fact]
    public void A_plain_read_writes_exactly_one_event()
    {
        _bench.Bus.With("voltage", _ => Volt(12.5m));
        _bench.Run(Steps.Read("battery", Voltage, Steps.Volts(12.40m, 12.90m)));
        Assert.Equal([typeof(RunBegun), typeof(Judged), typeof(RunEnded)], _bench.Journal.Events.Select(e => e.GetType()));
        Assert.Equal([1, 2, 3], _bench.Journal.Events.Select(e => e.N));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_text_of_digits_is_recorded_as_a_text(bool isJudged)
    {
        _bench.Bus.With("vin", _ => new TextValue("0042"));
        _bench.Run(Steps.Read("part", new("bus", "vin", null), isJudged ? new Expectation.EqualTo(new Operand.Constant(new TextValue("0042"))) : null));
        Assert.True(_bench.Judged.Single().Criteria[0].IsText);
    }

    [Fact]
    public void A_read_without_a_window_judges_nothing()
    {
        _bench.Bus.With("voltage", _ => Volt(12.5m));
        Assert.Equal(Verdict.None, _bench.Run(Steps.Read("battery", Voltage)));
    }

    [Theory]
    [InlineData(MissingCause.Silent)]
    [InlineData(MissingCause.Refused)]
    [InlineData(MissingCause.LinkDown)]
    [InlineData(MissingCause.Overload)]
    public void A_missing_reading_is_an_error_of_the_equipment(MissingCause cause)
    {
        _bench.Bus.Missing("voltage", cause);
        Assert.Equal(Verdict.Error, _bench.Run(Steps.Read("battery", Voltage, Steps.Volts(12m, 13m))));
        Assert.Equal(cause, _bench.Judged.Single().Cause);
    }

    [Theory]
    [InlineData(MissingCause.Silent, true, Verdict.Fail)]
    [InlineData(MissingCause.Silent, false, Verdict.Error)]
    [InlineData(MissingCause.LinkDown, true, Verdict.Error)]
    public void If_missing_fail_blames_the_vehicle_only_on_a_link_that_answers(MissingCause cause, bool othersAnswer, Verdict verdict)
    {
        _bench.Bus.Missing("voltage", cause).OthersAnswer = othersAnswer;
        Assert.Equal(verdict, _bench.Run(Steps.Read("battery", Voltage, Steps.Volts(12m, 13m)) with { MissingFails = true }));
    }

    [Fact]
    public void An_answer_that_does_not_come_in_time_is_silent_at_the_limit()
    {
        _bench.Bus.With("voltage", _ => Volt(12.5m)).Delay = TimeSpan.FromSeconds(9);
        Assert.Equal(Verdict.Error, _bench.Run(Steps.Read("battery", Voltage, Steps.Volts(12m, 13m), within: 2)));
        var judged = _bench.Judged.Single();
        Assert.Equal((MissingCause.Silent, 2_000_000), (judged.Cause, judged.Took));
    }

    [Fact]
    public void A_channel_read_as_a_whole_is_judged_index_by_index()
    {
        _bench.Bus.With("software[gateway]", _ => new TextValue("G1")).With("software[brakes]", _ => new TextValue("OLD"));
        var expect = new Expectation.OneOf([new Operand.Constant(new TextValue("G1")), new Operand.Constant(new TextValue("B1"))]);
        Assert.Equal(Verdict.Fail, _bench.Run(Steps.Read("software", new ChannelUse("bus", "software", null), expect)));
        Assert.Equal([("gateway", Verdict.Pass), ("brakes", Verdict.Fail)], _bench.Judged.Single().Criteria.Select(c => (c.Of, c.Verdict)));
    }

    [Fact]
    public void Record_only_is_measured_and_does_not_count()
    {
        _bench.Bus.With("voltage", _ => Volt(1m));
        _bench.Run(Steps.Read("battery", Voltage, Steps.Volts(12m, 13m)) with { RecordOnly = true });
        Assert.Equal((Verdict.Fail, Verdict.None), (_bench.Judged.Single().Measured, _bench.Judged.Single().Counted));
        Assert.Equal(Verdict.None, _bench.Result!.RollUp.Verdict);
    }

    [Fact]
    public void A_guarded_decision_near_the_end_of_the_window_is_inconclusive()
    {
        _bench.Meter.With("current", _ => Ampere(1.62m));
        var step = Steps.Read("lamp", Current, Steps.Window(1.60m, 2.40m, "A"));
        var guarded = step with { Decision = Decision.Guarded, Uncertainty = new Operand.Constant(Ampere(0.05m)) };
        Assert.Equal(Verdict.Inconclusive, _bench.Run(guarded));
        var criterion = _bench.Judged.Single().Criteria.Single();
        Assert.Equal((true, "0.05"), (criterion.IsGuarded, criterion.Uncertainty));
    }

    [Fact]
    public void A_simple_decision_keeps_the_uncertainty_and_goes_by_the_window()
    {
        _bench.Meter.With("current", _ => Ampere(1.62m));
        var step = Steps.Read("lamp", Current, Steps.Window(1.60m, 2.40m, "A")) with { Uncertainty = new Operand.Constant(Ampere(0.05m)) };
        Assert.Equal(Verdict.Pass, _bench.Run(step));
        var criterion = _bench.Judged.Single().Criteria.Single();
        Assert.Equal((false, "0.05"), (criterion.IsGuarded, criterion.Uncertainty));
    }

    [Fact]
    public void A_result_is_seen_by_a_later_computation()
    {
        _bench.Bus.With("voltage", _ => Volt(12.5m));
        var use = new ResultUse(0, [new ResultUse.Part("battery", [])], false);
        var twice = Expression(ValueShape.Number(UnitTable.Required("V")), "2 * results.battery.V", [], [use],
            scope => Volt(2 * ((NumberValue)scope.Result(0)!.Value!).Number));
        _bench.Run(
            Steps.Read("battery", Voltage),
            Steps.Of("twice", new StepAction.Compute(twice, null), null) with { Expect = Steps.Volts(25m, 25m) });
        Assert.Equal(Verdict.Pass, _bench.Result!.RollUp.Verdict);
    }

    [Fact]
    public void An_expression_without_a_value_is_an_error_of_its_step_and_the_run_goes_on()
    {
        _bench.Bus.With("voltage", _ => Volt(12.5m));
        var bad = Expression(ValueShape.Count, "1 / 0", [], [], _ => throw new ExpressionFault("division by zero"));
        _bench.Run(Steps.Of("bad", new StepAction.Compute(bad, null), null), Steps.Read("battery", Voltage, Steps.Volts(12m, 13m)));
        Assert.Equal([(Verdict.Error, "division by zero"), (Verdict.Pass, null)], _bench.Judged.Select(j => (j.Counted, j.Detail)));
    }
}
