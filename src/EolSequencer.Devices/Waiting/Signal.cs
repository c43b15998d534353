using System.Threading.Tasks.Sources;

namespace EolSequencer.Devices.Waiting;

/// <summary>
/// A result that is awaited again and again without a new object for each wait: one waiter at a time, on one thread.
/// Whoever gives the result goes on first; the waiter continues afterwards.
/// </summary>
internal sealed class Signal<T> : IValueTaskSource<T>
{
    private ManualResetValueTaskSourceCore<T> _core = new() { RunContinuationsAsynchronously = true };
    private bool _isSet = true;

    /// <summary>Begins the next wait. The one before must have ended.</summary>
    public void Reset()
    {
        _core.Reset();
        _isSet = false;
    }

    /// <summary>Ends the wait; without effect when it has ended already.</summary>
    public void TrySet(T result)
    {
        if (_isSet) return;
        _isSet = true;
        _core.SetResult(result);
    }

    /// <summary>Ends the wait because its caller gave up.</summary>
    public void TryCancel(CancellationToken cancel)
    {
        if (_isSet) return;
        _isSet = true;
        _core.SetException(new OperationCanceledException(cancel));
    }

    /// <summary>
    /// Waits until the result is there, or until the token is cancelled; once for each <see cref="Reset"/>. The waiter disposes
    /// <paramref name="giveUp"/> when it goes on.
    /// </summary>
    public ValueTask<T> WaitAsync(CancellationToken cancel, out CancellationTokenRegistration giveUp)
    {
        giveUp = cancel.UnsafeRegister(static (signal, token) => ((Signal<T>)signal!).TryCancel(token), this);
        return new ValueTask<T>(this, _core.Version);
    }

    T IValueTaskSource<T>.GetResult(short token) => _core.GetResult(token);

    ValueTaskSourceStatus IValueTaskSource<T>.GetStatus(short token) => _core.GetStatus(token);

    void IValueTaskSource<T>.OnCompleted(Action<object?> continuation, object? state, short token, ValueTaskSourceOnCompletedFlags flags) =>
        _core.OnCompleted(continuation, state, token, flags);
}
