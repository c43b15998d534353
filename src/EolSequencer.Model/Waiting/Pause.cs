namespace EolSequencer.Model.Waiting;

/// <summary>Lets time pass on an injected clock, never less than asked for. (The framework's delay drops what is below a millisecond.)</summary>
public static class Pause
{
    /// <summary>Completes when the span is over on the clock.</summary>
    /// <param name="span">Zero or less: at once.</param>
    /// <exception cref="OperationCanceledException"><paramref name="cancel"/> came first.</exception>
    public static async Task ForAsync(TimeSpan span, TimeProvider time, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        var begun = time.GetTimestamp();
        for (var left = span; left > TimeSpan.Zero; left = span - time.GetElapsedTime(begun))
        {
            // A timer may be coarser than the clock and fire early; then what is left is waited for.
            var over = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
            using var giveUp = cancel.UnsafeRegister(static (end, token) => ((TaskCompletionSource)end!).TrySetCanceled(token), over);
            using var timer = time.CreateTimer(static end => ((TaskCompletionSource)end!).TrySetResult(), over, left, Timeout.InfiniteTimeSpan);
            await over.Task;
        }
    }
}
