using EolSequencer.Engine.Tests.Kit;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using static EolSequencer.Engine.Tests.Kit.Channels;

namespace EolSequencer.Engine.Tests.Running;

/// <summary>Samples are taken at their moments or are missing; a drifting or prettified series would hide a fault.</summary>
public class SamplingTests
{
    private readonly Bench _bench = new();

    private static Step Sample(Reduction reduce, int mayMiss = 0, Expectation? expect = null) => Steps.Of(
        "idle", new StepAction.Sample(Voltage, Of(Voltage), Steps.Time(20), null, Steps.Time(0.5m), mayMiss, reduce), null) with { Expect = expect };

    [Fact]
    public void Twenty_seconds_at_half_a_second_are_forty_readings_at_multiples_of_it()
    {
        _bench.Bus.With("voltage", at => Volt((decimal)at.TotalSeconds));
        _bench.Run(Sample(Reduction.Count));
        var series = _bench.Journal.Events.OfType<SeriesRecorded>().Single();
        Assert.Equal("40", _bench.Judged.Single().Criteria[0].Value);
        Assert.Equal(Enumerable.Range(0, 40).Select(k => k * 500_000L + 5_000), series.Points.Select(p => p.At));
    }

    [Fact, Trait("case", "TMR-02")]
    public void Two_seconds_at_10_ms_are_200_readings_and_the_last_is_as_punctual_as_the_first()
    {
        _bench.Bus.With("voltage", _ => Volt(12m));
        _bench.Run(Steps.Of("dense", new StepAction.Sample(Voltage, Of(Voltage), Steps.Time(2), null, Steps.Time(0.01m), 0, Reduction.Count), null));
        Assert.Equal(Enumerable.Range(0, 200).Select(k => k * 10_000L + 5_000), _bench.Journal.Events.OfType<SeriesRecorded>().Single().Points.Select(p => p.At));
    }

    [Theory]
    [InlineData(Reduction.Min, "0.005")]
    [InlineData(Reduction.Max, "19.505")]
    [InlineData(Reduction.Mean, "9.755")]
    [InlineData(Reduction.Median, "9.755")]
    [InlineData(Reduction.First, "0.005")]
    [InlineData(Reduction.Last, "19.505")]
    [InlineData(Reduction.Range, "19.5")]
    public void Readings_are_reduced_to_one_value(Reduction reduce, string value)
    {
        _bench.Bus.With("voltage", at => Volt((decimal)at.TotalSeconds));
        _bench.Run(Sample(reduce));
        Assert.Equal(decimal.Parse(value, System.Globalization.CultureInfo.InvariantCulture),
            decimal.Parse(_bench.Judged.Single().Criteria[0].Value!, System.Globalization.CultureInfo.InvariantCulture));
    }

    [Fact, Trait("case", "TMR-03")]
    public void Readings_that_a_stall_swallowed_are_missing_and_never_stamped_anew()
    {
        _bench.Bus.With("voltage", _ => Volt(12m)).Delay = TimeSpan.FromSeconds(2);
        Assert.Equal(Verdict.Error, _bench.Run(Sample(Reduction.Mean, expect: Steps.Volts(11m, 13m))));
        Assert.Equal("30 of 40 readings are missing", _bench.Judged.Single().Detail);
    }

    [Theory]
    [InlineData(0, Verdict.Error)]
    [InlineData(1, Verdict.Pass)]
    public void As_many_may_be_missing_as_the_step_says(int mayMiss, Verdict verdict)
    {
        _bench.Bus.With("voltage", at => at > TimeSpan.FromSeconds(5) && at < TimeSpan.FromSeconds(5.4) ? null : Volt(12m));
        Assert.Equal(verdict, _bench.Run(Sample(Reduction.Mean, mayMiss, Steps.Volts(11m, 13m))));
    }
}
