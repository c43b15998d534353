using EolSequencer.Language.Scripts;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Rehearsal.Operators;
using EolSequencer.Rehearsal.Simulated;
using EolSequencer.Rehearsal.Tests.Kit;

namespace EolSequencer.Rehearsal.Tests.Operators;

/// <summary>The script that comes with the demo plant does what its first line says, on a vehicle that is in order.</summary>
public sealed class DemoScriptTests
{
    [Fact]
    public void The_late_hand_fails_the_brake_lamps_and_leaves_the_gauge_unread()
    {
        var script = ScriptLoader.Load(Path.Combine(DemoPlant.Folder, "scripts", "late-hand.yaml"));
        Assert.Empty(script.Diagnostics);
        var scripted = Run((inner, time) => new ScriptedOperator(script.Script!, inner, time));
        var plain = Run(null);

        Assert.Equal([(Verdict.Fail, "left"), (Verdict.Fail, "left")], scripted["brake_lamps.seen"].Select(one => (one.Counted, one.Detail)));
        Assert.Equal([(Verdict.Inconclusive, 30_000_000)], scripted["body.spare_wheel"].Select(one => (one.Counted, one.Took)));
        Assert.Equal(
            ["body.spare_wheel", "brake_lamps.seen"],
            scripted.Where(step => plain.Contains(step.Key) && step.Last().Counted != plain[step.Key].Last().Counted).Select(step => step.Key).Order(StringComparer.Ordinal));
    }

    private static ILookup<string, Judged> Run(Func<IOperator, TimeProvider, IOperator>? around)
    {
        var journal = new ListJournal();
        var end = VirtualRun.Run(new VirtualRunRequest
        {
            Run = "demo-1",
            Sequence = DemoPlant.Startup.Sequence!,
            Plant = DemoPlant.Startup.Plant!,
            Station = DemoPlant.Station,
            Order = DemoPlant.Orders[0],
            Journal = journal,
            Start = new DateTimeOffset(2026, 3, 2, 6, 0, 0, TimeSpan.Zero),
            Seed = 1,
            Operator = around,
        });
        Assert.Empty(end.End.Faults);
        return journal.Events.OfType<Judged>().ToLookup(one => one.Step);
    }

    private sealed class ListJournal : IRunJournal
    {
        public List<RunEvent> Events { get; } = [];

        public void Append(RunEvent next) => Events.Add(next);
    }
}
