using EolSequencer.Engine.Judging;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Waiting;

namespace EolSequencer.Engine.Actions;

/// <summary><c>wait</c>: lets time pass.</summary>
internal static class WaitAction
{
    public static async ValueTask<AttemptEnd> RunAsync(Attempt attempt, StepAction.Wait wait)
    {
        await Pause.ForAsync(Operands.Duration(wait.Duration, attempt.Scope), attempt.Run.Time, attempt.Halt.Token);
        return new AttemptEnd(Ending.TimeOver, attempt.Run.Now);
    }
}
