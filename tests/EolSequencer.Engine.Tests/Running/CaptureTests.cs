using System.Collections.Immutable;
using EolSequencer.Engine.Tests.Kit;
using EolSequencer.Model.Events;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Source;
using EolSequencer.Model.Traces;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;
using static EolSequencer.Engine.Tests.Kit.Channels;

namespace EolSequencer.Engine.Tests.Running;

/// <summary>A trace holds what came while its group ran, and says where nothing came.</summary>
public class CaptureTests
{
    private readonly Bench _bench = new();

    [Fact]
    public void Readings_come_at_the_groups_own_rate_and_stand_in_one_event()
    {
        _bench.Bus.With("voltage", at => Volt((decimal)at.TotalSeconds));
        _bench.Run(Steps.Wait("before", 1), Captured("run", 100, Steps.Wait("moment", 1)));
        var series = Series.Single();
        Assert.Equal(("run", "bus.voltage"), (series.Step, series.Channel));
        Assert.Equal(new CaptureSpan(1_000_000, 1_000_000, null), series.Capture);
        Assert.InRange(series.Points.Length, 10, 11);
        Assert.Equal((1_000_000L, 1_100_000L, "62"), (series.Points[0].At, series.Points[1].At, series.Points[1].Raw));
        Assert.Equal("1.1", series.Points[1].Value);
    }

    [Fact]
    public void A_step_behind_the_group_sees_the_trace_with_moments_from_its_beginning()
    {
        _bench.Bus.With("voltage", at => Volt((decimal)at.TotalSeconds));
        var verdict = _bench.Run(
            Steps.Wait("before", 1),
            Captured("run", 100, Steps.Wait("moment", 1)),
            Compute("crossing", "run", curve => Moments.Seconds(curve.Rises(1.55m, 1.55m)), 0.549m, 0.551m));
        Assert.Equal(Verdict.Pass, verdict);
    }

    [Fact]
    public void A_feature_that_is_not_there_is_an_error_in_words()
    {
        _bench.Bus.With("voltage", _ => Volt(12));
        _bench.Run(Captured("run", 100, Steps.Wait("moment", 1)), Compute("crossing", "run", curve => curve.Rises(13, 13), 0, 1));
        var judged = _bench.Judged.Last();
        Assert.Equal((Verdict.Error, "bus.voltage never rises through 13"), (judged.Counted, judged.Detail));
        Assert.Empty(judged.Criteria);
    }

    [Fact]
    public void A_silence_leaves_a_gap_that_the_record_keeps_and_no_feature_bridges()
    {
        _bench.Bus.With("voltage", at => at.TotalMilliseconds is > 350 and < 650 ? null : Volt(12));
        _bench.Run(Captured("run", 100, Steps.Wait("moment", 1)), Compute("highest", "run", curve => curve.Max(), 0, 20));
        var series = Series.Single();
        Assert.Equal("silent: voltage: silent", series.Capture!.Lost);
        Assert.Contains(series.Points, point => point.Value is null && point.At == 400_000);
        Assert.Equal("the trace of bus.voltage has a gap from 0.3 s to 0.7 s: silent: voltage: silent", _bench.Judged.Last().Detail);
        Assert.Equal(Verdict.Error, _bench.Judged.Last().Counted);
    }

    [Fact]
    public void A_group_that_is_cut_short_leaves_a_trace_that_breaks_off()
    {
        _bench.Bus.With("voltage", _ => Volt(12)).With("gate", at => TruthValue.Of(at.TotalSeconds < 0.5));
        var group = Captured("run", 100, Steps.Wait("moment", 1)) with { Require = new Requirement(True(Gate), ElseStop: false) };
        _bench.Run(group, Compute("highest", "run", curve => curve.Max(), 0, 20));
        Assert.Equal("lost: bus.gate", Series.Single().Capture!.Lost);
        Assert.StartsWith("the trace of bus.voltage has a gap from ", _bench.Judged.Last().Detail, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_attempt_is_recorded_and_the_last_one_counts()
    {
        _bench.Bus.Delay = TimeSpan.Zero;
        _bench.Bus.With("voltage", at => Volt(at.TotalSeconds <= 1.01 ? 5 : 12));
        var group = Captured("run", 100, Steps.Wait("moment", 1), Steps.Read("supply", Voltage, Steps.Volts(10, 20))) with { Retry = Steps.Retry(1) };
        var verdict = _bench.Run(group, Compute("lowest", "run", curve => curve.Between(100_000, 900_000).Min(), 11, 13));
        Assert.Equal(2, Series.Count());
        Assert.Equal(Verdict.Pass, verdict);
    }

    [Fact]
    public void A_loop_has_a_trace_for_each_of_its_values()
    {
        _bench.Bus.With("voltage", at => Volt((decimal)at.TotalSeconds));
        var group = Captured("run", 100, Steps.Wait("moment", 1)) with { Each = [new LoopName("side", [new LoopValue("left", null), new LoopValue("right", null)])] };
        _bench.Run(group);
        Assert.Equal(["run[left]", "run[right]"], Series.Select(series => series.Step));
    }

    [Fact]
    public void Each_index_of_a_channel_is_a_trace_of_its_own()
    {
        _bench.Bus.With("software[gateway]", _ => new TextValue("G1")).With("software[brakes]", _ => new TextValue("B1"));
        var use = new ChannelUse("bus", "software", null);
        var group = Steps.Group("run", Steps.Wait("moment", 1)) with { Capture = new Capture([new CapturedChannel(use, Of(use), TimeSpan.FromMilliseconds(500))]) };
        _bench.Run(group);
        Assert.Equal(["bus.software[gateway]", "bus.software[brakes]"], Series.Select(series => series.Channel));
        Assert.Equal("B1", Series.Last().Points[0].Value);
    }

    [Fact]
    public void Nothing_is_listened_to_when_the_group_has_ended()
    {
        var asked = TimeSpan.Zero;
        _bench.Bus.With("voltage", at =>
        {
            asked = at;
            return Volt(12);
        });
        _bench.Run(Captured("run", 100, Steps.Wait("moment", 1)), Steps.Wait("after", 5));
        Assert.InRange(asked.TotalSeconds, 0.9, 1);
    }

    private IEnumerable<SeriesRecorded> Series => _bench.Journal.Events.OfType<SeriesRecorded>();

    private static Group Captured(string id, int milliseconds, params Node[] children) => Steps.Group(id, children) with
    {
        Capture = new Capture([new CapturedChannel(Voltage, Of(Voltage), TimeSpan.FromMilliseconds(milliseconds))]),
    };

    private static Step Compute(string id, string group, Func<Curve, decimal> feature, decimal low, decimal high)
    {
        var use = new TraceUse(new ResultUse(0, [new ResultUse.Part(group, [])], false), Voltage);
        var expression = new Expression($"trace.{group}", SourcePlace.None);
        expression.Complete(new Expression.Compiled(
            ValueShape.Count, [], [], scope => new NumberValue(feature(Curve.Of(scope.Trace(0), UnitTable.Required("V"))), null)) { Traces = [use] });
        return Steps.Of(id, new StepAction.Compute(expression, null), null) with
        {
            Expect = new Expectation.Within(new Operand.Constant(new NumberValue(low, null)), new Operand.Constant(new NumberValue(high, null)), null),
        };
    }
}
