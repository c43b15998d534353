using System.Collections.Immutable;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Tests.Expressions.Kit;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Traces;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Tests.Expressions;

/// <summary>A trace is that of the group the author means, typed by its channel, and only behind the end of the group.</summary>
public class TraceTests
{
    private static Capture Capture { get; } = new(
    [
        Captured(SmallPlant.Rollers, "rollers", "speed"), Captured(SmallPlant.Bus, "bus", "engine_speed"), Captured(SmallPlant.Bus, "bus", "gear"),
        Captured(SmallPlant.Bus, "bus", "coolant"), Captured(SmallPlant.Bus, "bus", "brake_switch"), Captured(SmallPlant.Rollers, "rollers", "brake_force"),
    ]);

    private static readonly ResultScope RunUp = Inside().Leave(false);

    private static readonly FixedScope Scope = new FixedScope { Asker = "judge" }
        .Trace("run_up/rollers.speed", Numbers("rollers.speed", "km/h", (0, 0), (1, 36), (2, 72)))
        .Trace("run_up/bus.engine_speed", Numbers("bus.engine_speed", "rpm", (0, 1000), (1, 2000), (2, 3000)))
        .Trace("run_up/bus.gear", Numbers("bus.gear", null, (0, 1), (0.5, 2), (1.5, 3)))
        .Trace("run_up/bus.coolant", Numbers("bus.coolant", "°C", (0, 20), (2, 30)))
        .Trace("run_up/bus.brake_switch", Switch("bus.brake_switch", (0, false), (0.5, true), (1, false), (1.5, true)))
        .Trace("run_up/rollers.brake_force[fl]", Numbers("rollers.brake_force[fl]", "N", (0, 100), (2, 300)))
        .With("wheel", "fl");

    [Theory]
    [InlineData("trace.run_up.rollers.speed.max.km_h", "72")]
    [InlineData("trace.run_up.rollers.speed.max", "72 km/h")]
    [InlineData("trace.run_up.rollers.speed.max.m_s", "20")]
    [InlineData("trace.run_up.rollers.speed.at(0.5)", "18 km/h")]
    [InlineData("trace.run_up.rollers.speed.at(trace.run_up.bus.gear.rises(2, 3))", "54 km/h")]
    [InlineData("trace.run_up.rollers.speed.max_at.s", "2")]
    [InlineData("trace.run_up.rollers.speed.mean.km_h", "36")]
    [InlineData("trace.run_up.rollers.speed.between(0, 1).last", "36 km/h")]
    [InlineData("trace.run_up.rollers.speed.km_h.slope", "36")]
    [InlineData("trace.run_up.rollers.speed.m_s.slope", "10")]
    [InlineData("trace.run_up.rollers.speed.km_h.rises(18)", "0.5 s")]
    [InlineData("trace.run_up.rollers.speed.km_h.time_above(54).ms", "500")]
    [InlineData("trace.run_up.rollers.speed.km_h.rises(18) + trace.run_up.rollers.speed.km_h.rises(36)", "1.5 s")]
    [InlineData("trace.run_up.bus.engine_speed.rpm.over(trace.run_up.rollers.speed.km_h).between(1, 2).first", "55.5555555556")]
    [InlineData("trace.run_up.bus.gear.last", "3")]
    [InlineData("trace.run_up.bus.gear.count", "3")]
    [InlineData("trace.run_up.bus.coolant.max.celsius", "30")]
    [InlineData("trace.run_up.bus.coolant.celsius.settles(30, 1)", "1.8 s")]
    [InlineData("trace.run_up.bus.brake_switch.edges", "3")]
    [InlineData("trace.run_up.bus.brake_switch.rises.ms", "500")]
    [InlineData("trace.run_up.bus.brake_switch.rate", "60 1/min")]
    [InlineData("trace.run_up.bus.brake_switch.time_on.s", "1")]
    [InlineData("trace.run_up.bus.brake_switch.at(0.7) && !trace.run_up.bus.brake_switch.at(1.2)", "yes")]
    [InlineData("trace.run_up.rollers.brake_force[\"fl\"].max.N", "300")]
    [InlineData("trace.run_up.rollers.brake_force[wheel].max.N", "300")]
    public void Features_are_typed_by_their_channel(string text, string value) =>
        Assert.Equal(value, Author.Value(text, Scope, names: SmallPlant.With(RunUp)).ToString());

    [Fact]
    public void A_trace_and_a_reading_stand_in_one_condition() => Assert.Equal("yes", Author.Value(
        "trace.run_up.rollers.speed.max > bus.vehicle_speed", Scope.With("bus.vehicle_speed", 50, "km/h"), Wanted.Truth, SmallPlant.With(RunUp)).ToString());

    [Fact]
    public void The_traces_named_are_noted_each_once()
    {
        var expression = Author.Writes("trace.run_up.rollers.speed.max.km_h - trace.run_up.rollers.speed.min.km_h", names: SmallPlant.With(RunUp));
        var use = Assert.Single(expression.Traces);
        Assert.Equal(("run_up", "rollers.speed"), (use.Group.Resolve(Arguments.None, "x"), use.Channel.ToString()));
        Assert.Empty(expression.Channels);
        Assert.False(expression.IsKnownBeforeRun);
        Assert.False(expression.IsInexact);
        Assert.True(Author.Writes("trace.run_up.rollers.speed.mean.km_h", names: SmallPlant.With(RunUp)).IsInexact);
    }

    [Theory]
    [InlineData("trace.run_up.rollers.speed.maxx.km_h", "EXP053", "maxx")]
    [InlineData("trace.run_up.rollers.speed.slope", "EXP053", "slope")]
    [InlineData("trace.run_up.rollers.speed.max.rpm", "EXP009", "rpm")]
    [InlineData("trace.run_up.rollers.spede.max", "EXP050", "spede")]
    [InlineData("trace.run_up.bus.software.max", "EXP050", "software")]
    [InlineData("trace.run_down.rollers.speed.max", "EXP050", "run_down")]
    [InlineData("trace.run_up", "EXP014", "trace.run_up")]
    [InlineData("trace.run_up.rollers", "EXP014", "trace.run_up.rollers")]
    [InlineData("trace.run_up.rollers.brake_force.max", "EXP011", "trace.run_up.rollers.brake_force")]
    [InlineData("trace.run_up.rollers.speed", "EXP024", "trace.run_up.rollers.speed")]
    [InlineData("trace.run_up.rollers.speed.GetHashCode()", "EXP003", "GetHashCode")]
    [InlineData("trace.run_up.rollers.speed.max.km_h + trace.run_up.rollers.speed.max", "EXP019", "trace.run_up.rollers.speed.max.km_h + trace.run_up.rollers.speed.max")]
    public void A_fault_is_told_at_its_place(string text, string code, string place)
    {
        var fault = Author.Fault(text, names: SmallPlant.With(RunUp));
        Assert.Equal((code, place), (fault.Code.Id, Author.Pointed(text, fault)));
    }

    [Fact]
    public void What_wants_a_level_says_that_a_unit_comes_first() => Assert.Equal(
        "take its numbers with a unit first, as in  .km_h.slope", Author.Fault("trace.run_up.rollers.speed.slope", names: SmallPlant.With(RunUp)).Hint);

    [Fact]
    public void Inside_its_group_and_before_it_a_trace_is_not_complete()
    {
        const string Text = "trace.run_up.rollers.speed.max.km_h";
        Assert.Equal(ExpressionCodes.TraceNotEnded, Author.Fault(Text, names: SmallPlant.With(Inside())).Code);
        var before = ResultScope.Start();
        before.Enter("run_up", [], false, Capture).Leave(false);
        Assert.Equal(ExpressionCodes.TraceNotEnded, Author.Fault(Text, names: SmallPlant.With(before)).Code);
    }

    [Fact]
    public void A_group_that_is_not_always_needed_may_leave_no_trace() => Assert.Equal(
        ExpressionCodes.TraceMayBeMissing, Author.Fault("trace.run_up.rollers.speed.max.km_h", names: SmallPlant.With(Inside().Leave(true))).Code);

    [Fact]
    public void Before_the_run_there_is_no_trace() => Assert.Equal(
        ExpressionCodes.UnknownName, Author.Fault("trace.run_up.rollers.speed.max.km_h > 1", names: SmallPlant.BeforeRun).Code);

    [Fact]
    public void A_feature_that_is_not_there_is_a_fault_in_words()
    {
        var expression = Author.Writes("trace.run_up.rollers.speed.km_h.rises(100)", names: SmallPlant.With(RunUp));
        Assert.Equal("rollers.speed never rises through 100", Assert.Throws<ExpressionFault>(() => Scope.Evaluate(expression)).Message);
    }

    [Fact]
    public void A_warm_start_knows_the_traces_too()
    {
        var traces = ImmutableArray.Create(new TraceUse(new ResultUse(1, [new ResultUse.Part("a", [new IndexUse.Named("b")])], false), new ChannelUse("bus", "x", new IndexUse.Fixed("y"))));
        var read = Assert.Single(UnitFacts.Read(UnitFacts.Write([new CompiledExpression(0, ValueShape.Count, [], [], traces, true)])));
        Assert.Equal(("bus.x[y]", 1), (Assert.Single(read.Traces).Channel.ToString(), read.Traces[0].Group.Levels));
    }

    private static ResultScope Inside() => ResultScope.Start().Enter("run_up", [], false, Capture);

    private static CapturedChannel Captured(DeviceKind kind, string role, string channel) =>
        new(new ChannelUse(role, channel, null), kind.Channels[channel], null);

    private static Trace Numbers(string channel, string? unit, params (double Seconds, double Number)[] points)
    {
        var of = unit is null ? null : UnitTable.Required(unit);
        return new Trace(channel, ValueShape.Number(of!), [.. points.Select(point => new TracePoint((long)(point.Seconds * 1e6), new NumberValue((decimal)point.Number, of)))], [], 2_000_000);
    }

    private static Trace Switch(string channel, params (double Seconds, bool IsOn)[] points) =>
        new(channel, ValueShape.Truth, [.. points.Select(point => new TracePoint((long)(point.Seconds * 1e6), TruthValue.Of(point.IsOn)))], [], 2_000_000);
}
