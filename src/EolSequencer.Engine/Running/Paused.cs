using EolSequencer.Engine.Waiting;
using EolSequencer.Model.Waiting;

namespace EolSequencer.Engine.Running;

/// <summary>The pause before a further attempt.</summary>
internal static class Paused
{
    /// <summary>Lets the pause pass; false when it was halted meanwhile.</summary>
    public static async ValueTask<bool> ForAsync(TimeSpan pause, RunServices run, Halt halt)
    {
        try
        {
            await Pause.ForAsync(pause, run.Time, halt.Token);
            return true;
        }
        catch (OperationCanceledException) when (halt.IsRaised)
        {
            return false;
        }
    }
}
