namespace EolSequencer.Simulators.Time;

/// <summary>
/// A schedule on any clock, for simulators that are watched in real time: one timer, armed for whatever is due next.
/// </summary>
/// <remarks>
/// The clock's timers must call back on the one thread that uses the simulator. One that fires too soon is armed again. One that
/// fires late, as timers do that count whole milliseconds, costs nothing: what is due happens at the moment it was due, so a bus
/// full of frames of a quarter of a millisecond keeps its pace.
/// </remarks>
public sealed class ClockSchedule : ISchedule, IDisposable
{
    private readonly TimeProvider _clock;
    private readonly PriorityQueue<(IDue Target, int What), (long Due, long Number)> _due = new();
    private readonly ITimer _timer;
    private readonly long _start;
    private TimeSpan _told;
    private TimeSpan? _dueNow;
    private TimeSpan _armedFor = TimeSpan.MaxValue;
    private long _placed;
    private bool _isEnded;

    /// <summary>A schedule that starts now.</summary>
    public ClockSchedule(TimeProvider clock)
    {
        _clock = clock;
        _start = clock.GetTimestamp();
        _timer = clock.CreateTimer(static self => ((ClockSchedule)self!).DoWhatIsDue(), this, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
    }

    /// <inheritdoc/>
    public TimeSpan Now
    {
        get
        {
            // Never back: somebody from outside may have been told a later moment already.
            var now = _dueNow ?? _clock.GetElapsedTime(_start);
            if (now > _told) _told = now;
            return _told;
        }
    }

    /// <inheritdoc/>
    public void At(TimeSpan due, IDue target, int what = 0)
    {
        _due.Enqueue((target, what), (due.Ticks, _placed++));
        Arm();
    }

    /// <inheritdoc/>
    public long Stamp(TimeSpan moment) => _start + (long)((Int128)moment.Ticks * _clock.TimestampFrequency / TimeSpan.TicksPerSecond);

    /// <inheritdoc/>
    public TimeSpan Moment(long stamp) => _clock.GetElapsedTime(_start, stamp);

    /// <summary>Nothing happens any more.</summary>
    public void Dispose()
    {
        _isEnded = true;
        _timer.Dispose();
    }

    private void Arm()
    {
        if (_isEnded || !_due.TryPeek(out _, out var next) || next.Due >= _armedFor.Ticks) return;
        _armedFor = new TimeSpan(next.Due);
        var left = _armedFor - _clock.GetElapsedTime(_start);
        _timer.Change(left > TimeSpan.Zero ? RoundedUp(left) : TimeSpan.Zero, Timeout.InfiniteTimeSpan);
    }

    // The system's timers count whole milliseconds and cut off the rest.
    private static TimeSpan RoundedUp(TimeSpan left) =>
        TimeSpan.FromTicks((left.Ticks + TimeSpan.TicksPerMillisecond - 1) / TimeSpan.TicksPerMillisecond * TimeSpan.TicksPerMillisecond);

    private void DoWhatIsDue()
    {
        _armedFor = TimeSpan.MinValue;
        while (!_isEnded && _due.TryPeek(out var entry, out var place) && place.Due <= _clock.GetElapsedTime(_start).Ticks)
        {
            _due.Dequeue();
            _dueNow = new TimeSpan(place.Due);
            entry.Target.Due(entry.What);
        }

        _dueNow = null;
        _armedFor = TimeSpan.MaxValue;
        Arm();
    }
}
