namespace EolSequencer.Simulators.Time;

/// <summary>
/// A timer of virtual time. Most time limits are set again long before they are reached, so it keeps one place in the
/// queue: a place that comes too early is taken anew for the moment that counts.
/// </summary>
internal sealed class VirtualTimer(VirtualTime time, TimerCallback callback, object? state) : ITimer, IDue
{
    private TimerCallback? _callback = callback;
    private object? _state = state;
    private TimeSpan? _due;
    private long _number;
    private TimeSpan _period;
    private TimeSpan? _queuedFor;
    private int _queued;

    /// <summary>
    /// Whether the timer is due with that place of the queue. A place given up for an earlier one says nothing; one that
    /// has come too early is taken anew, in the order in which the timer was set.
    /// </summary>
    public bool Comes(int place, TimeSpan now)
    {
        if (place != _queued || _queuedFor is null) return false;
        _queuedFor = null;
        if (_due is not { } due) return false;
        if (due <= now) return true;
        Queue(due);
        return false;
    }

    /// <inheritdoc/>
    public bool Change(TimeSpan dueTime, TimeSpan period)
    {
        ThrowIfNoInterval(dueTime, nameof(dueTime));
        ThrowIfNoInterval(period, nameof(period));
        if (_callback is null) return false;

        _period = period;
        if (dueTime == Timeout.InfiniteTimeSpan) _due = null;
        else Set(time.Now + dueTime);
        return true;
    }

    /// <inheritdoc/>
    public void Due(int what)
    {
        var due = _due!.Value;
        _due = null;
        if (_period > TimeSpan.Zero) Set(due + _period);
        _callback!(_state);
    }

    public void Dispose()
    {
        _due = null;
        _callback = null;
        _state = null;
    }

    public ValueTask DisposeAsync()
    {
        Dispose();
        return ValueTask.CompletedTask;
    }

    private void Set(TimeSpan due)
    {
        (_due, _number) = (due, time.NextPlace());
        if (_queuedFor is null || _queuedFor > due) Queue(due);
    }

    private void Queue(TimeSpan due)
    {
        _queuedFor = due;
        time.At(due, _number, this, ++_queued);
    }

    private static void ThrowIfNoInterval(TimeSpan interval, string name)
    {
        if (interval != Timeout.InfiniteTimeSpan) ArgumentOutOfRangeException.ThrowIfLessThan(interval, TimeSpan.Zero, name);
    }
}
