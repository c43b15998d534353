using EolSequencer.Engine.Actions;
using EolSequencer.Engine.Planning;
using EolSequencer.Engine.Waiting;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Engine.Running;

/// <summary>Runs one attempt of a step to its end, whatever that is.</summary>
internal sealed class AttemptRunner(RunServices run)
{
    public async Task<(AttemptEnd End, Attempt Attempt)> RunAsync(PlannedStep planned, int number, Halt around, string? screen)
    {
        using var halt = new Halt(around);
        using var guard = planned.Step.Require is { } require ? await RequireGuard.BeginAsync(run, planned, require, halt) : null;
        using var notice = planned.Step.Show is { } text ? Show(planned, text) : null;
        using var attempt = new Attempt(run, planned, number, run.ScopeOf(planned), halt);
        var end = await EndOfAsync(attempt, screen);
        if (halt.IsRaised && halt.Kind == HaltKind.Lost && !around.IsRaised && planned.Step.Require is { ElseStop: true })
        {
            run.StopFor(halt.Reason!);
            around.Raise(HaltKind.Stopped, halt.Reason!);
        }

        return (end with { Readings = attempt.Readings }, attempt);
    }

    private static async Task<AttemptEnd> EndOfAsync(Attempt attempt, string? screen)
    {
        try
        {
            attempt.Halt.Token.ThrowIfCancellationRequested();
            var end = await ActAsync(attempt, screen);
            return attempt.Halt.IsRaised && attempt.Halt.Kind == HaltKind.Lost ? attempt.Cut(() => end) : end;
        }
        catch (OperationCanceledException) when (attempt.Halt.IsRaised)
        {
            return attempt.Cut(() => throw new InvalidOperationException("a halt that is raised cuts"));
        }
        catch (ExpressionFault fault)
        {
            return new AttemptEnd(Ending.ExpressionFault, attempt.Run.Now) { Detail = fault.Message };
        }
    }

    private static async ValueTask<AttemptEnd> ActAsync(Attempt attempt, string? screen) => attempt.Step.Action switch
    {
        StepAction.Read read => await ReadAction.RunAsync(attempt, read),
        StepAction.Compute compute => await ComputeAction.RunAsync(attempt, compute),
        StepAction.Sample sample => await SampleAction.RunAsync(attempt, sample),
        StepAction.Await condition => await ConditionAction.RunAsync(attempt, condition),
        StepAction.Ask { Until: not null } ask => await ConditionAction.RunAsync(attempt, ask, screen),
        StepAction.Wait wait => await WaitAction.RunAsync(attempt, wait),
        StepAction.SetTo set => await DeviceAction.RunAsync(attempt, set),
        StepAction.Do act => await DeviceAction.RunAsync(attempt, act),
        _ => await PromptAction.RunAsync(attempt, screen),
    };

    private IDisposable Show(PlannedStep planned, Model.Texts.LocalText text) =>
        run.Operator.Show(new Model.Ports.Notice(planned.Id, text, name => planned.Arguments.Find(name)?.ToString()));
}
