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

    /// <summary>How the plant is; a clock may be set to any year, so instruments may be overdue.</summary>
    public static Plant Plant { get; } = DemoPlant.Startup.Plant! with { OverdueInstruments = OverdueRule.Flag };

    /// <param name="start">Wall time at its beginning.</param>
    public static TestedVehicle Run(VehicleStory story, DurableJournal kept, DateTimeOffset start)
    {
        var (end, told, shown, devices, took) = Play(story, kept, start, [], VehicleRun.RunAsync);
        Assert.Empty(end.Faults);
        return new TestedVehicle
        {
            Run = kept.Run,
            Story = story,
            Plan = SystemPlant.PlanFor(DemoPlant.Orders[story.Order]),
            Told = [.. told.Told],
            Reported = told.Reported,
            Shown = shown,
            Result = end.Result!,
            Tried = [.. devices.Tried],
            Start = start,
            Took = took,
        };
    }

    /// <summary>Takes a run that broke off up again, on a vehicle that has been switched off meanwhile and is as it was before.</summary>
    /// <param name="what">To leave it safe, or to go on.</param>
    /// <param name="start">Wall time.</param>
    public static (TakenUp Part, TimeSpan Took) TakeUp(VehicleStory story, ResumedFor what, ImmutableArray<RunEvent> past, DurableJournal kept, DateTimeOffset start)
    {
        var (faults, told, _, devices, took) = Play(story with { ClockSteps = [] }, kept, start, past, async (request, stop) =>
            what == ResumedFor.Safety ? await VehicleRun.LeaveSafeAsync(request, stop) : (await VehicleRun.RunAsync(request, stop)).Faults);
        Assert.Empty(faults);
        Assert.Equal(told.Told.Count, told.Reported);
        return (new TakenUp(what, past, [.. told.Told.Select(one => one.Event)], [.. devices.Tried.Select(one => one.Action)]), took);
    }

    private static (T End, ToldJournal Told, int Shown, WatchedDevices Devices, TimeSpan Took) Play<T>(
        VehicleStory story, DurableJournal kept, DateTimeOffset start, ImmutableArray<RunEvent> past, Func<VehicleRunRequest, CancellationToken, Task<T>> run)
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
            () => run(
                new VehicleRunRequest
                {
                    Run = kept.Run,
                    Sequence = SystemPlant.Sequence,
                    Plant = Plant,
                    Station = DemoPlant.Station with { ShiftCheck = null },
                    Order = order,
                    Adapters = devices.Watch(station.Adapters),
                    Operator = station.Operator,
                    Journal = new ShowingJournal(told, shown.Add),
                    Time = clock,
                    Mode = RunMode.Production,
                    Past = past,
                },
                stop.Token),
            Longest);
        return (end, told, shown.Count, devices, time.Now);
    }
}
