using System.Collections.Immutable;
using EolSequencer.Engine.Actions;
using EolSequencer.Engine.Capturing;
using EolSequencer.Engine.Planning;
using EolSequencer.Engine.Waiting;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Waiting;

namespace EolSequencer.Engine.Running;

/// <summary>Runs nodes one after the other, groups with what holds for the whole group, and lanes side by side.</summary>
internal sealed class NodeRunner(RunServices run)
{
    /// <summary>The longest that an <c>always</c> may take altogether.</summary>
    public static readonly TimeSpan AlwaysWithin = TimeSpan.FromSeconds(30);

    private readonly StepRunner _steps = new(run);

    public async ValueTask<Flow> RunAsync(ImmutableArray<PlannedNode> nodes, Halt halt, string? screen)
    {
        foreach (var node in nodes)
        {
            var flow = node switch
            {
                PlannedStep step => await _steps.RunAsync(step, halt, screen),
                PlannedGroup group => await GuardedAsync(group, group.Group, group.Always, halt, screen, (inner, on) => RunAsync(group.Children, inner, on)),
                PlannedLanes lanes => await GuardedAsync(lanes, lanes.Node, lanes.Always, halt, screen, (inner, on) => LanesAsync(lanes, inner, on)),
                _ => throw new InvalidOperationException($"unknown node {node.GetType().Name}"),
            };
            if (flow == Flow.Stop) return flow;
        }

        return Flow.GoOn;
    }

    /// <summary>What holds for a whole group or for all lanes: whether it is needed, its caution, its guard, its further attempts.</summary>
    private async ValueTask<Flow> GuardedAsync(
        PlannedNode planned, Node node, ImmutableArray<PlannedNode> always, Halt around, string? screen, Func<Halt, string?, ValueTask<Flow>> inside)
    {
        if (around.IsRaised) return Flow.Stop;
        if (run.IsOver(planned)) return run.FlowBehind(planned);
        try
        {
            if (node.OnlyIf is not null && !run.IsUnderWay(planned) && !await IsNeededAsync(planned, node, around)) return Flow.GoOn;
            if (node.Caution is { } caution && !await CautionAsync(planned, caution, around, screen)) return Flow.Stop;
        }
        catch (OperationCanceledException) when (around.IsRaised)
        {
            return Flow.Stop;
        }

        for (var retries = node.Retry?.Times ?? 0; ; retries--)
        {
            // Only what has something of its own to lose, or to make safe, needs a halt of its own.
            using var own = node.Require is null && always.IsEmpty && planned is PlannedGroup ? null : new Halt(around);
            var halt = own ?? around;
            using var guard = node.Require is { } require ? await RequireGuard.BeginAsync(run, planned, require, halt) : null;
            using var capture = GroupCapture.Begin(run, planned);
            var flow = await inside(halt, screen);
            capture?.End(halt.IsRaised ? halt.Reason : null);
            if (run.Past is not null) run.Forget(always);
            await LeaveSafeAsync(always);
            var lost = halt.IsRaised && !around.IsRaised && halt.Kind == HaltKind.Lost;
            if (lost && node.Require!.ElseStop) run.StopFor(halt.Reason!);
            if (lost) flow = node.Require!.ElseStop ? Flow.Stop : Flow.GoOn;
            else if (halt.IsRaised && !around.IsRaised) around.Raise(halt.Kind, halt.Reason!);
            if (retries == 0 || around.IsRaised || !node.Retry!.On.Contains(Worst(planned))) return flow;
            foreach (var step in Plan.StepsOf(planned)) run.Results.Forget(step.Id);
            if (node.Retry.Pause > TimeSpan.Zero) await Pause.TryForAsync(node.Retry.Pause, run.Time, around.Token); // The next attempt sees that it is halted.
        }
    }

    /// <summary>
    /// Every node of an <c>always</c> is tried, whatever stopped the rest; one that stops or fails does not keep the next
    /// from its turn.
    /// </summary>
    public async Task LeaveSafeAsync(ImmutableArray<PlannedNode> always)
    {
        if (always.IsEmpty) return;
        using var halt = new Halt();
        using var limit = run.Time.CreateTimer(
            _ => halt.Raise(HaltKind.Stopped, "the time for leaving the vehicle safe is over"), null, AlwaysWithin, Timeout.InfiniteTimeSpan);
        foreach (var node in always) await RunAsync([node], halt, null);
    }

    private async ValueTask<Flow> LanesAsync(PlannedLanes lanes, Halt halt, string? screen)
    {
        using var turn = lanes.Screen is not null && screen is null ? await run.Prompts.Turns.EnterAsync(halt.Token) : default;
        var flows = await Task.WhenAll(lanes.Lanes.Select(lane => LaneAsync(lane, halt, screen ?? lanes.Screen).AsTask()).ToList());
        return flows.Contains(Flow.Stop) ? Flow.Stop : Flow.GoOn;
    }

    private async ValueTask<Flow> LaneAsync(ImmutableArray<PlannedNode> lane, Halt halt, string? screen)
    {
        var flow = await RunAsync(lane, halt, screen);
        if (flow == Flow.Stop) halt.Raise(HaltKind.Stopped, "another branch stopped the run");
        return flow;
    }

    private async Task<bool> CautionAsync(PlannedNode planned, Model.Texts.LocalText caution, Halt halt, string? screen)
    {
        using var turn = screen is null ? await run.Prompts.Turns.EnterAsync(halt.Token) : default;
        return await _steps.AcknowledgeAsync(planned, caution, halt);
    }

    private async Task<bool> IsNeededAsync(PlannedNode planned, Node node, Halt halt)
    {
        var steps = Plan.StepsOf(planned);
        using var attempt = new Attempt(run, steps[0] with { Arguments = planned.Arguments }, 1, run.ScopeOf(planned), halt);
        var (truth, fault) = await OnlyIf.DecideAsync(attempt, node.OnlyIf!);
        if (truth == true) return true;
        foreach (var step in steps)
        {
            if (fault is null)
            {
                run.Results.NoteNotNeeded(step.Id);
                run.Log.Append((n, at) => new NotNeeded { N = n, At = at, Step = step.Id });
            }
        }

        return false;
    }

    private Verdict Worst(PlannedNode planned) =>
        Verdicts.Worst(Plan.StepsOf(planned).Where(step => !run.Results.IsOpen(step.Id)).Select(step => run.Results.Counted(step.Id) ?? Verdict.None));
}
