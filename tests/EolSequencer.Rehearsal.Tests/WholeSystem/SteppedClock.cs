namespace EolSequencer.Rehearsal.Tests.WholeSystem;

/// <summary>A clock whose wall time can be set; what it measures and its timers do not move by that.</summary>
internal sealed class SteppedClock(TimeProvider inner) : TimeProvider
{
    private TimeSpan _by;

    public override long TimestampFrequency => inner.TimestampFrequency;

    public override TimeZoneInfo LocalTimeZone => inner.LocalTimeZone;

    /// <summary>Sets the wall clock.</summary>
    public void Set(TimeSpan by) => _by += by;

    public override long GetTimestamp() => inner.GetTimestamp();

    public override DateTimeOffset GetUtcNow() => inner.GetUtcNow() + _by;

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) => inner.CreateTimer(callback, state, dueTime, period);
}
