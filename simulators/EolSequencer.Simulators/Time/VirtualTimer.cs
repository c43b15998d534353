namespace EolSequencer.Simulators.Time;

/// <summary>A timer of virtual time. Changing it leaves its old entry in the queue, told apart by the version.</summary>
internal sealed class VirtualTimer(VirtualTime time, TimerCallback callback, object? state) : ITimer, IDue
{
    private TimerCallback? _callback = callback;
    private object? _state = state;
    private TimeSpan _next;
    private TimeSpan _period;
    private int _version;

    /// <summary>Whether a queue entry of that version still means something.</summary>
    public bool Awaits(int version) => _version == version;

    /// <inheritdoc/>
    public bool Change(TimeSpan dueTime, TimeSpan period)
    {
        ThrowIfNoInterval(dueTime, nameof(dueTime));
        ThrowIfNoInterval(period, nameof(period));
        if (_callback is null) return false;

        _version++;
        _period = period;
        if (dueTime != Timeout.InfiniteTimeSpan)
        {
            _next = time.Now + dueTime;
            time.At(_next, this, _version);
        }

        return true;
    }

    /// <inheritdoc/>
    public void Due(int what)
    {
        if (_period > TimeSpan.Zero)
        {
            _next += _period;
            time.At(_next, this, _version);
        }
        else
        {
            _version++;
        }

        _callback!(_state);
    }

    public void Dispose()
    {
        _version++;
        _callback = null;
        _state = null;
    }

    public ValueTask DisposeAsync()
    {
        Dispose();
        return ValueTask.CompletedTask;
    }

    private static void ThrowIfNoInterval(TimeSpan interval, string name)
    {
        if (interval != Timeout.InfiniteTimeSpan) ArgumentOutOfRangeException.ThrowIfLessThan(interval, TimeSpan.Zero, name);
    }
}
