using System.Collections.Immutable;
using EolSequencer.Engine.Judging;
using EolSequencer.Engine.Planning;
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
    /// <summary>Runs to the end, whatever it is; trouble of devices, operator and record is a result.</summary>
    /// <param name="stop">
    /// Ends the steps at their next wait; <c>always</c> still runs. Behind the last step it comes too late and changes nothing.
    /// Cancel it on the run's thread.
    /// </param>
    public static async Task<RunResult> RunAsync(RunRequest request, CancellationToken stop)
    {
        using var top = new Halt();
        using var stopped = stop.Register(() => top.Raise(HaltKind.Stopped, "stopped at the station"));
        var journal = new FaultKeepingJournal(request.Journal, fault => top.Raise(HaltKind.Stopped, fault));
        var log = new EventLog(journal, request.Time);
        using var limits = new TimeLimits(request.Time);
        var run = ServicesFor(request, log, limits);
        log.Append((n, at) => request.Begin(n, at) with { NotApplicable = request.Plan.NotApplicable, Planned = request.Plan.Counting.Length });

        var nodes = new NodeRunner(run);
        var flow = await nodes.RunAsync(request.Plan.Prepare, top, null);
        if (flow == Flow.GoOn) flow = await nodes.RunAsync(request.Plan.Steps, top, null);
        if (flow == Flow.Stop) log.Append((n, at) => new Stopped { N = n, At = at, Reason = run.Stopped ?? top.Reason! });
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
        ImmutableArray<string> notCounted = [.. Plan.StepsOf([request.Plan.AfterVerdict]).Select(step => step.Id)];
        log.Append((n, at) => new RunEnded { N = n, At = at, RollUp = rollUp, Interrupted = interrupted, NotReached = notReached, NotCounted = notCounted });
        return journal.Fault is not null && rollUp.Verdict != Verdict.Error
            ? new RunResult(rollUp.Plus(Verdict.Error), interrupted, journal.Fault)
            : new RunResult(rollUp, interrupted, journal.Fault);
    }

    private static RunServices ServicesFor(RunRequest request, EventLog log, TimeLimits limits) => new()
    {
        Time = request.Time,
        Log = log,
        Results = new ResultBook(),
        Order = request.Order,
        Operator = request.Operator,
        Prompts = new PromptDesk(request.Operator, log),
        Live = request.Live,
        Limits = limits,
        Devices = request.Sequence.Roles.ToImmutableDictionary(
            role => role.Role, role => new BoundDevice(request.Devices[role.Role], role.Kind, log)),
    };

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
