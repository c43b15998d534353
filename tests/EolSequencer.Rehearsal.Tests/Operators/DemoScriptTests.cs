using System.Runtime.CompilerServices;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Language.Scripts;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Rehearsal.Operators;
using EolSequencer.Rehearsal.Simulated;

namespace EolSequencer.Rehearsal.Tests.Operators;

/// <summary>The script that comes with the demo plant does what its first line says, on a vehicle that is in order.</summary>
public sealed class DemoScriptTests
{
    private static readonly string Demo = Path.GetFullPath(Path.Combine(Here(), "../../../sequences/demo"));

    [Fact]
    public void The_late_hand_fails_the_brake_lamps_and_leaves_the_gauge_unread()
    {
        var script = ScriptLoader.Load(Path.Combine(Demo, "scripts", "late-hand.yaml"));
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
        var sequence = SequenceLoader.Load(Path.Combine(Demo, "startup", "startup.yaml"), ExpressionCache.None);
        var end = VirtualRun.Run(new VirtualRunRequest
        {
            Run = "demo-1",
            Sequence = sequence.Sequence!,
            Plant = sequence.Plant!,
            Station = StationLoader.Load(Path.Combine(Demo, "stations", "startup.yaml")).Station!,
            Order = OrderLoader.Load(Path.Combine(Demo, "orders", "FV-100231.yaml"), ExpressionCache.None).Order!,
            Journal = journal,
            Start = new DateTimeOffset(2026, 3, 2, 6, 0, 0, TimeSpan.Zero),
            Seed = 1,
            Operator = around,
        });
        Assert.Empty(end.End.Faults);
        return journal.Events.OfType<Judged>().ToLookup(one => one.Step);
    }

    private static string Here([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;

    private sealed class ListJournal : IRunJournal
    {
        public List<RunEvent> Events { get; } = [];

        public void Append(RunEvent next) => Events.Add(next);
    }
}
