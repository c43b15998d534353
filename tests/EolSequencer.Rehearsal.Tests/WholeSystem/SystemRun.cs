using System.Collections.Immutable;
using EolSequencer.Model.Events;
using EolSequencer.Model.Plants;
using EolSequencer.Records.Writing;
using EolSequencer.Rehearsal.Simulated;
using EolSequencer.Rehearsal.Tests.Kit;
using EolSequencer.Rehearsal.Tests.WholeSystem.Stories;
using EolSequencer.Simulators.Faults;
using EolSequencer.Simulators.Time;
using EolSequencer.Station.Running;

namespace EolSequencer.Rehearsal.Tests.WholeSystem;

/// <summary>One vehicle through the whole program, as on the line: a production run, in virtual time.</summary>
internal static class SystemRun
{
    /// <summary>A question to a person waits for ever; when that person has left, somebody else stops the run.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(10);

    /// <summary>A run that takes longer hangs.</summary>
    private static readonly TimeSpan Longest = Patience + TimeSpan.FromMinutes(2);

    /// <param name="start">Wall time at its beginning.</param>
    public static TestedVehicle Run(VehicleStory story, DurableJournal kept, DateTimeOffset start)
    {
        var order = DemoPlant.Orders[story.Order];
        var time = new VirtualTime(start);
        var clock = new SteppedClock(time);
        using var station = new SimulatedStation(order, time, story.Seed, story.Faults.Select(text => FaultText.Parse(text).Fault!));
        using var stop = new CancellationTokenSource();
        time.At(story.Stop ?? Patience, stop.Cancel);
        foreach (var (at, by) in story.ClockSteps) time.At(at, () => clock.Set(by));
        var told = new ToldJournal(kept, time);
        var shown = new List<RunEvent>();
        var devices = new WatchedDevices(time);
        var end = time.Run(
            () => VehicleRun.RunAsync(
                new VehicleRunRequest
                {
                    Run = kept.Run,
                    Sequence = SystemPlant.Sequence,
                    Plant = DemoPlant.Startup.Plant! with { OverdueInstruments = OverdueRule.Flag }, // A clock may be set to any year.
                    Station = DemoPlant.Station,
                    Order = order,
                    Adapters = devices.Watch(station.Adapters),
                    Operator = station.Operator,
                    Journal = new ShowingJournal(told, shown.Add),
                    Time = clock,
                    Mode = RunMode.Production,
                },
                stop.Token),
            Longest);
        Assert.Empty(end.Faults);
        return new TestedVehicle
        {
            Run = kept.Run,
            Story = story,
            Plan = SystemPlant.PlanFor(order),
            Told = [.. told.Told],
            Reported = told.Reported,
            Shown = shown.Count,
            Result = end.Result!,
            Tried = [.. devices.Tried],
            Start = start,
            Took = time.Now,
        };
    }
}
