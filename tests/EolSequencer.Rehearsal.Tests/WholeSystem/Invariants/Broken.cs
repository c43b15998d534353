using System.Collections.Immutable;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Records.Verify;
using EolSequencer.Rehearsal.Tests.WholeSystem.Stories;

namespace EolSequencer.Rehearsal.Tests.WholeSystem.Invariants;

/// <summary>Ways to break what holds of a good vehicle, each with the invariant that has to see it.</summary>
internal static class Broken
{
    public static IReadOnlyList<(string Invariant, Func<PlayedStory, PlayedStory> Break)> Ways { get; } =
    [
        ("what was reported is kept", Each(one => one with { Recorded = one.Recorded!.Value[..^1] })),
        ("what was reported is kept", Each(one => one with { Recorded = null })),
        ("what is kept is what was told", Each(one => one with { Recorded = one.Recorded!.Value.SetItem(3, one.Recorded.Value[4]).SetItem(4, one.Recorded.Value[3]) })),
        ("what is kept is what was told", Each(one => one with { Recorded = one.Recorded!.Value.Add(one.Recorded.Value[^1]) })),
        ("what is shown is kept", Each(one => one with { Shown = one.Shown + 1 })),
        ("a healthy disk keeps everything", Each(one => one with { Result = one.Result with { Fault = "the disk is full" } })),
        ("a run ends once, with its last event", Each(one => one with { Recorded = one.Recorded!.Value.Add(one.Recorded.Value[^1]) })),
        ("a run ends once, with its last event", Each(one => one with { Recorded = one.Recorded!.Value[..^1] })),
        ("a run ends once, with its last event", Each(one => one with { Recorded = one.Recorded!.Value.Add(one.Recorded.Value[3]) })),
        ("a run ends once, with its last event", Each(one => one with { Recorded = one.Recorded!.Value[1..] })),
        ("chain, ledger and tables are whole", story => story with { Verified = WithFinding(story.Verified) }),
        ("chain, ledger and tables are whole", story => story with { Openings = [.. story.Openings.Select(WithFinding)] }),
        ("a run that broke off is told as such", Each(one => one with { Recorded = one.Recorded!.Value[..^1] })),
        ("a run that broke off is told as such", story => story with { Runs = [.. story.Runs.Select(run => run with { End = null })] }),
        ("a step is as bad as its worst criterion", Told<Judged>(judged => !judged.Criteria.IsEmpty, judged => judged with { Criteria = [judged.Criteria[0] with { Verdict = Verdict.Fail }] })),
        ("a run comes to the sum of its steps", Told<Judged>(judged => judged.Counted == Verdict.Pass, judged => judged with { Counted = Verdict.None })),
        ("a run comes to the sum of its steps", Told<RunEnded>(ended => ended with { RollUp = ended.RollUp.Plus(Verdict.Pass) })),
        ("a run is as bad as its worst step", Told<Judged>(judged => judged.Counted == Verdict.Pass, judged => judged with { Counted = Verdict.Fail })),
        ("a run is as bad as its worst step", Told<RunEnded>(ended => ended with { Interrupted = true })),
        ("a run without a whole record is an error", Each(one => one with { Reported = one.Reported - 1 })),
        ("a run without a whole record is an error", Each(one => one with { Reported = one.Reported - 1, Result = one.Result with { Fault = "the disk is full" } })),
        ("every planned step is accounted for", WithoutTold(next => next is Judged { Step: "body.coding" })),
        ("every planned step is accounted for", Told<Judged>(judged => judged.Step == "body.coding", judged => judged with { Step = "body.unknown" })),
        ("always ran", Each(one => one with { Tried = one.Tried[..^2] })),
        ("always ran", Each(one => one with { Tried = [.. one.Tried.Where(act => act.Action != "bus.default_session")] })),
        ("always ran behind everything else", WithoutTold(next => next is Judged { Step: "session_end" })),
        ("what a group switched on it switched off", Each(one => one with { Tried = [.. one.Tried.Where(act => act.Action != "bus.lamp[tail_right] = no")] })),
        ("events are numbered without a gap", WithoutTold(next => next.N == 7)),
        ("the wall clock moves no stamp", Told<Judged>(judged => judged with { At = judged.At + 1 })),
        ("the wall clock moves no stamp", Told<RunBegun>(begun => begun with { Wall = begun.Wall.AddSeconds(1) })),
        ("a wall clock that was set is told", Told<NotNeeded>(next => new ClockSet { N = next.N, At = next.At, Before = DateTimeOffset.UnixEpoch, After = DateTimeOffset.UnixEpoch.AddHours(1) })),
        ("attempts are numbered from 1", Told<Judged>(judged => judged with { Attempt = 2 })),
        ("a device that is back was lost", Told<NotNeeded>(next => new DeviceBack { N = next.N, At = next.At, Role = "bus" })),
        ("a device that is back was lost", Twice(next => next is NotNeeded, next => new DeviceLost { N = next.N, At = next.At, Role = "bus", Cause = "unplugged" })),
        ("a prompt is answered once, after it was asked", WithoutTold(next => next is Asked { Kind: PromptKind.Scan })),
        ("a prompt is answered once, after it was asked", Twice(next => next is Answered, next => next)),
        ("once everything is over, a run has one end", Each(one => one with { AtLast = one.AtLast!.Value[..^1] })),
        ("once everything is over, a run has one end", Each(one => one with { AtLast = one.AtLast!.Value.Add(one.AtLast.Value[^1]) })),
        ("taking up adds, and changes nothing before it", Each(one => one with { AtLast = one.AtLast!.Value.RemoveAt(3) })),
        ("taking up adds, and changes nothing before it", Each(one => one with { AtLast = one.AtLast!.Value.SetItem(3, one.AtLast.Value[4]) })),
        ("a vehicle is left safe first, and nothing else moves", Part(ResumedFor.Safety, part => part with { Tried = part.Tried[..^1] })),
        ("a vehicle is left safe first, and nothing else moves", Part(ResumedFor.Safety, part => part with { Tried = part.Tried.Insert(0, "bus.write_vin") })),
        ("a vehicle is left safe first, and nothing else moves", Each(one => one with { TakenUp = [.. one.TakenUp.Where(part => part.For != ResumedFor.Safety)] })),
        ("nothing is judged twice but what has to be done again", Part(ResumedFor.Steps, part => part with { Told = part.Told.Add(part.Past.OfType<Judged>().First(judged => judged.Step == "rest.margin")) })),
        ("a run that does not go on releases nothing", Part(ResumedFor.End, part => part with { Told = [.. part.Told.Select(next => next is RunEnded ended ? ended with { Interrupted = false } : next)] })),
        ("a run that does not go on releases nothing", Part(ResumedFor.End, part => part with { Told = part.Told[..^1] })),
        ("the whole of a run that was taken up comes to the sum of its steps", Each(one => one with { AtLast = [.. one.AtLast!.Value.Where(next => next is not Judged { Step: "rest.margin" })] })),
    ];

    private static VerifyReport WithFinding(VerifyReport report) =>
        report with { Findings = [new Finding(FindingKind.Event, "startup_1-000001", 7, "it is missing")], FindingCount = 1 };

    private static Func<PlayedStory, PlayedStory> Each(Func<TestedVehicle, TestedVehicle> change) => story => story with { Vehicles = [.. story.Vehicles.Select(change)] };

    private static Func<PlayedStory, PlayedStory> Part(ResumedFor what, Func<TakenUp, TakenUp> change) =>
        Each(one => one with { TakenUp = [.. one.TakenUp.Select(part => part.For == what ? change(part) : part)] });

    private static Func<PlayedStory, PlayedStory> EachTold(Func<ImmutableArray<(RunEvent Event, TimeSpan At)>, IEnumerable<(RunEvent Event, TimeSpan At)>> change) =>
        Each(one => one with { Told = [.. change(one.Told)] });

    private static Func<PlayedStory, PlayedStory> WithoutTold(Func<RunEvent, bool> which) => EachTold(told => told.Where(one => !which(one.Event)));

    private static Func<PlayedStory, PlayedStory> Twice(Func<RunEvent, bool> which, Func<RunEvent, RunEvent> become) =>
        EachTold(told => told.SelectMany(one => which(one.Event) ? new[] { (become(one.Event), one.At), (become(one.Event), one.At) } : [one]));

    private static Func<PlayedStory, PlayedStory> Told<T>(Func<T, RunEvent> change)
        where T : RunEvent => Told(_ => true, change);

    private static Func<PlayedStory, PlayedStory> Told<T>(Func<T, bool> which, Func<T, RunEvent> change)
        where T : RunEvent => EachTold(told => told.Select(one => one.Event is T next && which(next) ? (change(next), one.At) : one));
}
