using EolSequencer.Engine.Actions;
using EolSequencer.Engine.Judging;
using EolSequencer.Engine.Planning;
using EolSequencer.Engine.Waiting;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Engine.Running;

/// <summary>Runs one attempt of a step to its end, whatever that is.</summary>
internal sealed class AttemptRunner(RunServices run)
{
    /// <returns>How it ended, with its readings, and when its clock started.</returns>
    public async ValueTask<(AttemptEnd End, long Start)> RunAsync(PlannedStep planned, int number, Halt around, string? screen)
    {
        // Only what has something of its own to lose needs a halt of its own.
        using var own = planned.Step.Require is null ? null : new Halt(around);
        var halt = own ?? around;
        using var guard = planned.Step.Require is { } require ? await RequireGuard.BeginAsync(run, planned, require, halt) : null;
        using var notice = planned.Step.Show is { } text ? Show(planned, text) : null;
        using var attempt = new Attempt(run, planned, number, run.ScopeOf(planned), halt);
        AttemptEnd end;
        try
        {
            end = halt.IsRaised ? attempt.Cut() : await Act(attempt, screen);
            if (halt is { IsRaised: true, Kind: HaltKind.Lost }) end = attempt.Cut();
        }
        catch (OperationCanceledException) when (halt.IsRaised)
        {
            end = attempt.Cut();
        }
        catch (ExpressionFault fault)
        {
            end = new AttemptEnd(Ending.ExpressionFault, run.Now) { Detail = fault.Message };
        }

        if (planned.Step.Require is { ElseStop: true } && !around.IsRaised && halt is { IsRaised: true, Kind: HaltKind.Lost })
        {
            run.StopFor(halt.Reason!);
            around.Raise(HaltKind.Stopped, halt.Reason!);
        }

        if (planned.Step.Serial is { } rule) end = SerialCheck.Of(run.Serials, run.Order.Vin, planned, rule, end);
        return (end with { Readings = attempt.Readings }, attempt.Start);
    }

    private static ValueTask<AttemptEnd> Act(Attempt attempt, string? screen) => attempt.Step.Action switch
    {
        StepAction.Read read => ReadAction.RunAsync(attempt, read),
        StepAction.Compute compute => ComputeAction.RunAsync(attempt, compute),
        StepAction.Sample sample => SampleAction.RunAsync(attempt, sample),
        StepAction.Await condition => ConditionAction.RunAsync(attempt, condition),
        StepAction.Ask { Until: not null } ask => ConditionAction.RunAsync(attempt, ask, screen),
        StepAction.Wait wait => WaitAction.RunAsync(attempt, wait),
        StepAction.SetTo set => DeviceAction.RunAsync(attempt, set),
        StepAction.Do act => DeviceAction.RunAsync(attempt, act),
        _ => PromptAction.RunAsync(attempt, screen),
    };

    private IDisposable Show(PlannedStep planned, Model.Texts.LocalText text) =>
        run.Operator.Show(new Model.Ports.Notice(planned.Id, text, name => planned.Arguments.Find(name)?.ToString()));
}
