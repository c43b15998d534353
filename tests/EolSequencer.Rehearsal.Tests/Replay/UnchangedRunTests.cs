using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Events;
using EolSequencer.Rehearsal.Replay;
using EolSequencer.Rehearsal.Tests.Kit;

namespace EolSequencer.Rehearsal.Tests.Replay;

/// <summary>A replay that would not find what was found, with nothing changed, could not be believed about anything that was.</summary>
public sealed class UnchangedRunTests
{
    private static readonly Lazy<Revision> Again = new(() =>
    {
        var recorded = (RunBegun)Run(0, 1)[0];
        return new Revision(SequenceLoader.LoadRecorded(recorded.Sources, recorded.Sequence, ExpressionCache.None).Sequence!);
    });

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Good_vehicles_come_out_as_recorded(ulong seed)
    {
        for (var order = 0; order < DemoPlant.Orders.Count; order++) ComesOutAsRecorded(Run(order, seed));
    }

    [Theory]
    [InlineData("lamp_open=low_left")]
    [InlineData("crank_voltage=9")]
    [InlineData("wheel_sensor_open=fl")]
    [InlineData("scans_other_label")]
    [InlineData("bus_silent@90s")]
    [InlineData("unit_silent=brakes")]
    [InlineData("operator_leaves")]
    [InlineData("misjudges=lights.front")]
    [InlineData("meter_silent")]
    [InlineData("idle_hunting")]
    public void Faulty_vehicles_come_out_as_recorded(string fault)
    {
        for (var order = 0; order < DemoPlant.Orders.Count; order += 2) ComesOutAsRecorded(Run(order, 7, fault));
    }

    private static void ComesOutAsRecorded(IReadOnlyList<RunEvent> events)
    {
        var old = new Revision(DemoPlant.Startup.Sequence!);
        var run = RunReplay.Of(old, Again.Value, events);

        Assert.Empty(run.Steps.Where(step => !step.Was.IsSame(step.Is)).Select(step => $"{step.Step}: {step.Was.Word} -> {step.Is.Word} {step.Why} {step.Was.Detail}"));
        Assert.All(run.Steps, step => Assert.Equal(step.Was.Criteria, step.Is.Criteria));
        var ended = events.OfType<RunEnded>().Single();
        Assert.Equal((ended.RollUp, ended.RollUp), (run.Was, run.Is));
        Assert.Equal(RunFold.Of(events).IsFirstTimeThrough && ended.RollUp.Releases, run.WasFirstTimeThrough);
        Assert.Equal(run.WasFirstTimeThrough, run.IsFirstTimeThrough);
    }

    private static IReadOnlyList<RunEvent> Run(int order, ulong seed, params string[] faults)
    {
        var journal = new Recorded();
        DemoPlant.Rehearse(DemoPlant.Orders[order], seed, journal, null, faults);
        return journal.Events;
    }
}
