namespace EolSequencer.Model.Waiting;

/// <summary>Lets time pass on an injected clock, never less than asked for. (The framework's delay drops what is below a millisecond.)</summary>
public static class Pause
{
    /// <summary>Completes when the span is over on the clock.</summary>
    /// <param name="span">Zero or less: at once.</param>
    /// <exception cref="OperationCanceledException"><paramref name="cancel"/> came first.</exception>
    public static async Task ForAsync(TimeSpan span, TimeProvider time, CancellationToken cancel)
    {
        if (!await TryForAsync(span, time, cancel)) throw new OperationCanceledException(cancel);
    }

    /// <summary>Completes when the span is over on the clock, or when it is given up; for waits that usually are.</summary>
    /// <param name="span">Zero or less: at once.</param>
    /// <returns>False when <paramref name="cancel"/> came first.</returns>
    public static async ValueTask<bool> TryForAsync(TimeSpan span, TimeProvider time, CancellationToken cancel)
    {
        if (cancel.IsCancellationRequested) return false;
        var begun = time.GetTimestamp();
        for (var left = span; left > TimeSpan.Zero; left = span - time.GetElapsedTime(begun))
        {
            // A timer may be coarser than the clock and fire early; then what is left is waited for.
            var over = new TaskCompletionSource<bool>(TaskCreationOptions.RunContinuationsAsynchronously);
            using var giveUp = cancel.UnsafeRegister(static end => ((TaskCompletionSource<bool>)end!).TrySetResult(false), over);
            using var timer = time.CreateTimer(static end => ((TaskCompletionSource<bool>)end!).TrySetResult(true), over, left, Timeout.InfiniteTimeSpan);
            if (!await over.Task) return false;
        }

        return true;
    }
}
