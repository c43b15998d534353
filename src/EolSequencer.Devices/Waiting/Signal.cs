using System.Threading.Tasks.Sources;

namespace EolSequencer.Devices.Waiting;

/// <summary>
/// A result that is awaited again and again without a new object for each wait: one waiter at a time, on one thread.
/// Whoever gives the result goes on first; the waiter continues afterwards, through the context in which it waited.
/// </summary>
internal sealed class Signal<T> : IValueTaskSource<T>
{
    // Left to itself, the core makes a callback and a pair of objects for each wait that ends.
    private static readonly SendOrPostCallback End = static signal => ((Signal<T>)signal!).EndCore();

    private ManualResetValueTaskSourceCore<T> _core;
    private SynchronizationContext? _context;
    private T? _result;
    private OperationCanceledException? _givenUp;
    private bool _isAwaited;
    private bool _isSet = true;

    /// <summary>Begins the next wait. The one before must have ended.</summary>
    public void Reset()
    {
        _core.Reset();
        (_isSet, _isAwaited, _givenUp) = (false, false, null);
    }

    /// <summary>Ends the wait; without effect when it has ended already.</summary>
    public void TrySet(T result)
    {
        if (_isSet) return;
        _result = result;
        Set();
    }

    /// <summary>Ends the wait because its caller gave up.</summary>
    public void TryCancel(CancellationToken cancel)
    {
        if (_isSet) return;
        _givenUp = new OperationCanceledException(cancel);
        Set();
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

    void IValueTaskSource<T>.OnCompleted(Action<object?> continuation, object? state, short token, ValueTaskSourceOnCompletedFlags flags)
    {
        (_isAwaited, _context) = (true, SynchronizationContext.Current);
        _core.OnCompleted(continuation, state, token, flags & ~ValueTaskSourceOnCompletedFlags.UseSchedulingContext);
    }

    private void Set()
    {
        _isSet = true;
        if (!_isAwaited) EndCore();
        else if (_context is { } context) context.Post(End, this);
        else ThreadPool.UnsafeQueueUserWorkItem(static signal => signal.EndCore(), this, preferLocal: true);
    }

    private void EndCore()
    {
        if (_givenUp is { } givenUp) _core.SetException(givenUp);
        else _core.SetResult(_result!);
    }
}
