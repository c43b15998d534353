using System.Collections.Immutable;
using EolSequencer.Engine.Judging;
using EolSequencer.Engine.Planning;
using EolSequencer.Engine.Resuming;
using EolSequencer.Engine.Waiting;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;

namespace EolSequencer.Engine.Running;

/// <summary>
/// The interpreter: one sequence on one vehicle. Must be called on a single thread (a synchronisation context that
/// keeps all continuations and timers on it); then the same inputs give the same events.
/// </summary>
public static class SequenceRunner
{
    /// <summary>Runs to the end, whatever it is; trouble of devices, operator and record is a result. A run that broke off goes on.</summary>
    /// <param name="stop">
    /// Ends the steps at their next wait; <c>always</c> still runs. Behind the last step it comes too late and changes nothing.
    /// Cancel it on the run's thread.
    /// </param>
    public static async Task<RunResult> RunAsync(RunRequest request, CancellationToken stop)
    {
        using var top = new Halt();
        using var stopped = stop.Register(() => top.Raise(HaltKind.Stopped, "stopped at the station"));
        var journal = new FaultKeepingJournal(request.Journal, fault => top.Raise(HaltKind.Stopped, fault));
        using var limits = new TimeLimits(request.Time);
        var run = ServicesFor(request, journal, limits);
        if (run.Past is null) run.Log.Append((n, at) => request.Begin(n, at) with { NotApplicable = request.Plan.NotApplicable, Planned = request.Plan.Counting.Length });
        else TakeUp(run, request, ResumedFor.Steps);

        var nodes = new NodeRunner(run);
        var flow = run.Past?.Stopped is null ? await nodes.RunAsync(request.Plan.Prepare, top, null) : Flow.Stop;
        if (flow == Flow.GoOn && run.Past?.HasConditions != true) await new ConditionReader(run, top).ReadAsync(request.Sequence.Conditions);
        if (flow == Flow.GoOn) flow = await nodes.RunAsync(request.Plan.Steps, top, null);
        if (flow == Flow.Stop && run.Past?.Stopped is null) run.Log.Append((n, at) => new Stopped { N = n, At = at, Reason = run.Stopped ?? top.Reason! });
        var notReached = NotReached(run.Results, request.Plan.Prepare, request.Plan.Steps);
        await nodes.LeaveSafeAsync(request.Plan.Always);
        notReached = notReached.AddRange(NotReached(run.Results, request.Plan.Always));

        var rollUp = RollUp.Of(Counted(run.Results, request.Plan.Counting));
        if (journal.Fault is not null) rollUp = rollUp.Plus(Verdict.Error);

        // What the sequence says of itself is no interruption, and once the steps are over there is nothing left to stop.
        var interrupted = run.Stopped is null && (flow == Flow.Stop || journal.Fault is not null);
        if (interrupted && rollUp.Releases) rollUp = rollUp.Plus(Verdict.Inconclusive); // Stopped at the moment at which the last step passed.
        run.Decided = rollUp.Verdict;
        using var after = new Halt();
        await nodes.RunAsync(request.Plan.AfterVerdict, after, null);
        run.Log.Append((n, at) => new RunEnded { N = n, At = at, RollUp = rollUp, Interrupted = interrupted, NotReached = notReached, NotCounted = NotCounted(request.Plan) });
        return journal.Fault is not null && rollUp.Verdict != Verdict.Error
            ? new RunResult(rollUp.Plus(Verdict.Error), interrupted, journal.Fault)
            : new RunResult(rollUp, interrupted, journal.Fault);
    }

    /// <summary>
    /// Leaves the vehicle of a run that broke off safe: the <c>always</c> of the groups in which it broke off, the innermost first,
    /// then that of the sequence. The run neither goes on nor ends.
    /// </summary>
    /// <returns>Why the record could not be kept; null when it was.</returns>
    public static async Task<string?> LeaveSafeAsync(RunRequest request)
    {
        var journal = new FaultKeepingJournal(request.Journal, _ => { });
        using var limits = new TimeLimits(request.Time);
        var run = ServicesFor(request, journal, limits);
        var underWay = Plan.NodesOf(request.Plan.Prepare, request.Plan.Steps).Where(run.IsUnderWay).Reverse().ToList();
        TakeUp(run, request, ResumedFor.Safety);
        var nodes = new NodeRunner(run);
        foreach (var node in underWay) await LeaveAsync(node is PlannedGroup group ? group.Always : ((PlannedLanes)node).Always);
        await LeaveAsync(request.Plan.Always);
        return journal.Fault;

        async Task LeaveAsync(ImmutableArray<PlannedNode> always)
        {
            run.Forget(always);
            await nodes.LeaveSafeAsync(always);
        }
    }

    /// <summary>Ends a run that broke off as interrupted, with what it had come to; nothing of it runs any more.</summary>
    /// <returns>The result; with the reason when the record could not be kept.</returns>
    public static RunResult End(Plan plan, ImmutableArray<RunEvent> past, IRunJournal journal, TimeProvider time, string? person)
    {
        var kept = new FaultKeepingJournal(journal, _ => { });
        var results = new ResultBook();
        var log = LogBehind(new RunPast(plan, past, results), kept, time);
        log.Append((n, at) => new Resumed { N = n, At = at, For = ResumedFor.End, Wall = time.GetUtcNow(), Person = person });
        var rollUp = RollUp.Of(Counted(results, plan.Counting));
        if (rollUp.Releases) rollUp = rollUp.Plus(Verdict.Inconclusive); // It broke off behind the last step.
        log.Append((n, at) => new RunEnded { N = n, At = at, RollUp = rollUp, Interrupted = true, NotReached = NotReached(results, plan.Prepare, plan.Steps, plan.Always) });
        return new RunResult(kept.Fault is null ? rollUp : rollUp.Plus(Verdict.Error), true, kept.Fault);
    }

    private static EventLog LogBehind(RunPast past, IRunJournal journal, TimeProvider time) => new(journal, time, past.Events[^1].N, past.At(time.GetUtcNow()));

    private static void TakeUp(RunServices run, RunRequest request, ResumedFor what)
    {
        run.Log.Append((n, at) => new Resumed { N = n, At = at, For = what, Wall = request.Time.GetUtcNow(), Person = request.Person });
        if (what == ResumedFor.Steps) run.Past!.Reopen();
    }

    private static RunServices ServicesFor(RunRequest request, IRunJournal journal, TimeLimits limits)
    {
        var results = new ResultBook();
        var past = request.Past.IsEmpty ? null : new RunPast(request.Plan, request.Past, results);
        var log = past is null ? new EventLog(journal, request.Time) : LogBehind(past, journal, request.Time);
        return new()
        {
            Time = request.Time,
            Log = log,
            Results = results,
            Past = past,
            Order = request.Order,
            Operator = request.Operator,
            Prompts = new PromptDesk(request.Operator, log, past?.Prompts ?? 0),
            Live = request.Live,
            Serials = request.Serials,
            Limits = limits,
            Devices = request.Sequence.Roles.ToImmutableDictionary(
                role => role.Role, role => new BoundDevice(request.Devices[role.Role], role.Kind, log)),
        };
    }

    private static ImmutableArray<string> NotCounted(Plan plan) => [.. Plan.StepsOf([plan.AfterVerdict]).Select(step => step.Id)];

    private static IEnumerable<Verdict> Counted(ResultBook results, ImmutableArray<PlannedStep> steps)
    {
        foreach (var step in steps)
        {
            if (results.Counted(step.Id) is { } verdict) yield return verdict;
        }
    }

    private static ImmutableArray<string> NotReached(ResultBook results, params ReadOnlySpan<ImmutableArray<PlannedNode>> parts) =>
        [.. Plan.StepsOf(parts).Where(step => results.IsOpen(step.Id)).Select(step => step.Id)];
}
