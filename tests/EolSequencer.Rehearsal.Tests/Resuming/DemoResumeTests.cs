using System.Collections.Immutable;
using EolSequencer.Engine.Planning;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Rehearsal.Simulated;
using EolSequencer.Rehearsal.Tests.Kit;

namespace EolSequencer.Rehearsal.Tests.Resuming;

/// <summary>The start-up of the demo plant, broken off anywhere, is left safe and comes to one end, on a vehicle that meanwhile has been switched off.</summary>
public sealed class DemoResumeTests
{
    private static readonly ImmutableArray<RunEvent> Whole = Run([]);

    [Theory]
    [MemberData(nameof(Cuts))]
    public void It_is_left_safe_and_comes_to_its_end(int cut)
    {
        var plan = Planner.For(DemoPlant.Startup.Sequence!, DemoPlant.Orders[0]);
        var safe = LeaveSafe([.. Whole.Take(cut)]);
        Assert.Equal(plan.Always.SelectMany(node => Plan.StepsOf(node)).Select(step => step.Id), safe.Skip(cut).OfType<Judged>().Select(judged => judged.Step).TakeLast(Plan.StepsOf(plan.Always).Length));
        Assert.DoesNotContain(safe, next => next is RunEnded);

        var events = Run(safe);
        Assert.Equal(Enumerable.Range(1, events.Length), events.Select(next => next.N));
        Assert.Equal(events.Select(next => next.At).Order(), events.Select(next => next.At));
        Assert.IsType<RunEnded>(events[^1]);
        Assert.Single(events, next => next is RunEnded);
        var ended = (RunEnded)events[^1];
        var had = events.OfType<Judged>().Select(judged => judged.Step).Concat(events.OfType<NotNeeded>().Select(step => step.Step)).ToHashSet();
        Assert.Empty(plan.Counting.Select(step => step.Id).Except(had).Except(ended.NotReached));
        Assert.Empty(DoneTwice(plan, cut, events));
        Assert.False(ended.Interrupted);
    }

    public static TheoryData<int> Cuts() => [.. Enumerable.Range(1, 12).Select(part => part * (Whole.Length - 2) / 12)];

    /// <summary>Steps with a result before the cut and after it that do not stand where everything is done again.</summary>
    private static IEnumerable<string> DoneTwice(Plan plan, int cut, ImmutableArray<RunEvent> events)
    {
        var repeated = Plan.StepsOf(plan.Prepare, plan.Always, plan.AfterVerdict)
            .Concat(Plan.NodesOf(plan.Steps).Where(node => !node.Captures.IsEmpty || node is PlannedGroup { Group.Always.IsEmpty: false }
                or PlannedGroup { Group.RepeatOnResume: true } or PlannedGroup { Group.Retry: not null }).SelectMany(node => Plan.StepsOf(node)))
            .Concat(plan.Counting.Where(step => step.Step.Retry is not null)).Select(step => step.Id).ToHashSet();
        var before = events.Take(cut).OfType<Judged>().Select(judged => judged.Step).ToHashSet();
        return events.Skip(cut).OfType<Judged>().Select(judged => judged.Step).Where(step => before.Contains(step) && !repeated.Contains(step));
    }

    private static ImmutableArray<RunEvent> Run(ImmutableArray<RunEvent> past)
    {
        var journal = new Recorded();
        foreach (var next in past) journal.Append(next);
        Assert.Empty(VirtualRun.Run(Request(past, journal)).End.Faults);
        return journal.Events;
    }

    private static ImmutableArray<RunEvent> LeaveSafe(ImmutableArray<RunEvent> past)
    {
        var journal = new Recorded();
        foreach (var next in past) journal.Append(next);
        Assert.Empty(VirtualRun.LeaveSafe(Request(past, journal)));
        return journal.Events;
    }

    private static VirtualRunRequest Request(ImmutableArray<RunEvent> past, Recorded journal) => new()
    {
        Run = "rehearsal-1",
        Sequence = DemoPlant.Startup.Sequence!,
        Plant = DemoPlant.Startup.Plant!,
        Station = DemoPlant.Station,
        Order = DemoPlant.Orders[0],
        Journal = journal,
        Start = new DateTimeOffset(2026, 11, 25, 6, past.IsEmpty ? 0 : 10, 0, TimeSpan.Zero),
        Seed = 3,
        Past = past,
    };
}
