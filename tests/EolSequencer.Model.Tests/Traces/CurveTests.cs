using CsCheck;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Traces;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Model.Tests.Traces;

/// <summary>A feature is right at its edges, and one that is not there says so in words.</summary>
public class CurveTests
{
    private static readonly Curve Ramp = Curves.Of((0, 0), (1, 10), (2, 20), (4, 20), (5, 0));

    [Fact]
    public void Between_two_readings_runs_a_straight_line_and_a_reading_is_exact()
    {
        Assert.Equal(5m, Ramp.At(Curves.Micro(0.5)));
        Assert.Equal(10m, Ramp.At(Curves.Micro(1)));
        Assert.Equal("7.000001 s lies outside the trace of bus.speed, which lasts 5 s", Fault(() => Ramp.At(7_000_001)));
    }

    [Fact]
    public void Extremes_come_with_their_first_moments()
    {
        Assert.Equal((20m, 2_000_000L), (Ramp.Max(), Ramp.MaxAt()));
        Assert.Equal((0m, 0L), (Ramp.Min(), Ramp.MinAt()));
        Assert.Equal((0m, 0m), (Ramp.First(), Ramp.Last()));
    }

    [Fact]
    public void The_mean_is_one_over_time_and_not_over_readings()
    {
        Assert.Equal(14m, Ramp.Mean());
        Assert.Equal(20m, Ramp.Between(Curves.Micro(2), Curves.Micro(4)).Mean());
        Assert.Equal(7m, Curves.Of((0, 7)).Mean());
    }

    [Fact]
    public void A_crossing_wants_the_other_side_first()
    {
        Assert.Equal(1_500_000, Ramp.Rises(15, 15));
        Assert.Equal(4_250_000, Ramp.Falls(15, 15));
        Assert.Equal(1_800_000, Ramp.Rises(5, 18));
        Assert.Equal("bus.speed never rises through 0", Fault(() => Ramp.Rises(0, 0)));
        Assert.Equal("bus.speed never rises from 5 to 21", Fault(() => Ramp.Rises(5, 21)));
        Assert.Contains("which is lower", Fault(() => Ramp.Rises(5, 4)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_step_of_whole_numbers_counts_from_its_first_reading()
    {
        var gear = Curves.Of((0, 1), (1, 2), (1.02, 2), (3, 2), (3.02, 3));
        Assert.Equal(3_020_000, gear.Rises(2, 3));
    }

    [Fact]
    public void A_distance_between_levels_keeps_noise_from_counting()
    {
        var noisy = Curves.Of((0, 0), (1, 10), (2, 9.9), (3, 10.1), (4, 0), (5, 11));
        Assert.Equal(3, noisy.CountRises(10, 10));
        Assert.Equal(2, noisy.CountRises(5, 10));
        Assert.Equal(1, noisy.CountFalls(10, 5));
        Assert.Equal(0, noisy.CountRises(20, 20));
    }

    [Fact]
    public void A_rate_wants_two_rises()
    {
        Assert.Equal(60m, Curves.Of((0, 0), (0.5, 10), (1, 0), (1.5, 10)).Rate(5, 5));
        Assert.Equal("bus.speed rises only once in this part of the trace; a rate wants two rises", Fault(() => Ramp.Rate(15, 15)));
        Assert.Equal("bus.speed never rises in this part of the trace; a rate wants two rises", Fault(() => Ramp.Rate(50, 50)));
    }

    [Fact]
    public void Time_above_and_below_is_cut_at_the_crossings()
    {
        Assert.Equal(Curves.Micro(2.75), Ramp.TimeAbove(15));
        Assert.Equal(Curves.Micro(2.25), Ramp.TimeBelow(15));
        Assert.Equal(0, Ramp.TimeAbove(20));
    }

    [Fact]
    public void Settling_is_the_last_entry_that_is_kept()
    {
        var curve = Curves.Of((0, 0), (1, 10), (2, 14), (3, 10), (4, 9), (5, 10));
        Assert.Equal(2_750_000, curve.Settles(10, 1));
        Assert.Equal(0, curve.Settles(7, 7));
        Assert.Equal("bus.speed does not settle: it ends at 10, outside 12 ± 1", Fault(() => curve.Settles(12, 1)));
    }

    [Fact]
    public void Too_few_readings_are_told_and_never_a_number()
    {
        var empty = Curves.Of();
        Assert.Equal("bus.speed has no reading in this part of the trace", Fault(() => empty.Max()));
        Assert.Equal("bus.speed has 1 of the 2 readings wanted in this part of the trace", Fault(() => Curves.Of((0, 1)).Slope()));
        Assert.Equal("the readings of bus.speed all came at one moment, which gives no slope", Fault(() => Curves.Of((1, 1), (1, 2)).Slope()));
        Assert.Contains("never", Fault(() => empty.Length == 0 ? Curves.Of((0, 1)).Rises(5, 5) : 0), StringComparison.Ordinal);
    }

    [Fact]
    public void A_gap_hides_what_fell_into_it_and_a_part_without_it_is_known()
    {
        var curve = Curves.With([new TraceGap(2_000_000, 4_000_000, "stale: no frame")], (0, 0), (1, 10), (2, 20), (4, 20), (5, 0));
        Assert.Equal("the trace of bus.speed has a gap from 2 s to 4 s: stale: no frame", Fault(() => curve.Max()));
        Assert.Equal(20m, curve.Between(0, 2_000_000).Max());
        Assert.Equal(10m, curve.At(4_500_000));
        Assert.Contains("has a gap", Fault(() => curve.At(3_000_000)), StringComparison.Ordinal);
        Assert.Contains("has a gap", Fault(() => curve.Between(1_000_000, 3_000_000).Max()), StringComparison.Ordinal);
    }

    [Fact]
    public void A_part_lies_in_the_trace_and_goes_forward()
    {
        Assert.Contains("ends at 1 s, before its start at 2 s", Fault(() => Ramp.Between(2_000_000, 1_000_000)), StringComparison.Ordinal);
        Assert.Contains("lies outside", Fault(() => Ramp.Between(0, 5_000_001)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_ratio_has_a_gap_where_the_divisor_is_zero()
    {
        var ratio = Curves.Of((0, 1), (1, 1), (2, 1), (3, 2)).Over(Curves.Of((0, 1), (1, 0), (2, 2), (3, 4)));
        Assert.Equal([1m, 0.5m, 0.5m], ratio.Points.Select(point => point.Number));
        Assert.Equal("the trace of bus.speed over bus.speed has a gap from 0 s to 2 s: bus.speed is 0", Fault(() => ratio.Max()));
    }

    [Fact]
    public void A_ratio_that_steps_back_too_soon_has_not_stepped()
    {
        var slips = Curves.Of((0, 2), (1, 2), (1.1, 1), (1.2, 1), (1.3, 2), (3, 2), (3.1, 1), (5, 1));
        Assert.InRange(slips.RatioStep(2, 1, 500_000), 3_000_000, 3_100_000);
        Assert.Contains("does not step from 2 to 1", Fault(() => slips.RatioStep(2, 1, 3_000_000)), StringComparison.Ordinal);
        Assert.Contains("does not step from 1 to 1", Fault(() => slips.RatioStep(1, 1, 0)), StringComparison.Ordinal);
    }

    [Fact]
    public void Numbers_of_a_trace_come_in_the_unit_wanted()
    {
        var unit = UnitTable.Required("m/s");
        var trace = new Trace("bus.speed", ValueShape.Number(unit), [new TracePoint(0, new NumberValue(10m, unit))], [], 1);
        Assert.Equal(36m, Curve.Of(trace, UnitTable.Required("km/h")).Points[0].Number);
    }

    [Fact]
    public void Above_and_below_make_the_whole_for_any_level_that_is_not_touched_for_long() => AnyCurve.Sample((curve, level) =>
        Assert.InRange(curve.TimeAbove(level + 0.5m) + curve.TimeBelow(level + 0.5m), curve.Points[^1].At - curve.Points[0].At - curve.Count, curve.Points[^1].At - curve.Points[0].At + curve.Count));

    [Fact]
    public void Rises_and_falls_take_turns() => AnyCurve.Sample((curve, level) =>
        Assert.InRange(curve.CountRises(level + 0.5m, level + 0.5m) - curve.CountFalls(level + 0.5m, level + 0.5m), -1, 1));

    private static readonly Gen<(Curve Curve, int Level)> AnyCurve = Gen.Select(
        Gen.Select(Gen.Int[1, 1000], Gen.Int[-20, 20]).Array[2, 40], Gen.Int[-20, 20], (steps, level) =>
        {
            var at = 0.0;
            return (Curves.Of([.. steps.Select(step => (at += step.Item1 / 1000.0, (double)step.Item2))]), level);
        });

    private static string Fault(Func<object> feature) => Assert.Throws<ExpressionFault>(() => { feature(); }).Message;
}
