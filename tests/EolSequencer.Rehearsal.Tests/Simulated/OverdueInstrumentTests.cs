using System.Collections.Immutable;
using EolSequencer.Model.Events;
using EolSequencer.Model.Plants;
using EolSequencer.Rehearsal.Simulated;
using EolSequencer.Rehearsal.Tests.Kit;
using EolSequencer.Simulators.Time;
using EolSequencer.Station.Fitness;
using EolSequencer.Station.Running;

namespace EolSequencer.Rehearsal.Tests.Simulated;

/// <summary>No vehicle is judged by an instrument that nobody vouches for, unless the plant says so; then it is seen.</summary>
public sealed class OverdueInstrumentTests
{
    [Theory]
    [InlineData("2027-01-31T22:59:59Z", 0)] // The demo plant is in a zone one hour ahead in winter: the last moment of the last day.
    [InlineData("2027-01-31T23:00:00Z", 1)]
    [InlineData("2027-03-31T21:59:59Z", 1)]
    [InlineData("2027-03-31T22:00:00Z", 2)]
    public void The_last_day_counts_in_the_plants_zone(string now, int overdue)
    {
        var found = Calibrations.Overdue(DemoPlant.Station, DemoPlant.Startup.Sequence!, DemoPlant.Startup.Plant!, DateTimeOffset.Parse(now, System.Globalization.CultureInfo.InvariantCulture));
        Assert.Equal(overdue, found.Length);
    }

    [Fact]
    public void An_instrument_without_a_day_is_overdue()
    {
        var station = DemoPlant.Station with { Devices = [.. DemoPlant.Station.Devices.Select(one => one with { Instrument = one.Instrument is null ? null : one.Instrument with { CalibrationDue = null } })] };
        Assert.All(Calibrations.Overdue(station, DemoPlant.Startup.Sequence!, DemoPlant.Startup.Plant!, DateTimeOffset.UnixEpoch), line => Assert.Contains("does not say until when", line, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(RunMode.Production, OverdueRule.Refuse, false)]
    [InlineData(RunMode.Production, OverdueRule.Flag, true)]
    [InlineData(RunMode.Rehearsal, OverdueRule.Refuse, true)]
    public void A_production_run_is_refused_or_flagged_and_a_rehearsal_goes_on(RunMode mode, OverdueRule rule, bool runs)
    {
        var (journal, notes) = (new Recorded(), new List<string>());
        var time = new VirtualTime(new DateTimeOffset(2028, 2, 1, 6, 0, 0, TimeSpan.Zero));
        using var station = new SimulatedStation(DemoPlant.Orders[0], time, 1, []);
        var end = time.Run(() => VehicleRun.RunAsync(
            new VehicleRunRequest
            {
                Run = "startup_1-000001",
                Sequence = DemoPlant.Startup.Sequence!,
                Plant = DemoPlant.Startup.Plant! with { OverdueInstruments = rule },
                Station = DemoPlant.Station with { ShiftCheck = null },
                Order = DemoPlant.Orders[0],
                Adapters = station.Adapters,
                Operator = station.Operator,
                Journal = journal,
                Time = time,
                Mode = mode,
                Only = ["rest"],
                Note = notes.Add,
            },
            default));

        Assert.Equal(runs, end.Result is not null);
        ImmutableArray<string> told = runs && mode == RunMode.Production ? [.. notes] : end.Faults;
        if (mode == RunMode.Production) Assert.Contains(told, line => line.Contains("the calibration of M-0417 (meter) was due on 2027-03-31", StringComparison.Ordinal));
        if (runs) Assert.Equal(2, Calibrations.OverdueIn((RunBegun)journal.Events[0]).Length);
        else Assert.Empty(journal.Events);
    }
}
