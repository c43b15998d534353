namespace EolSequencer.Station.Time;

/// <summary>A clock whose timers call back where they are posted to, so that a run stays on its thread.</summary>
internal sealed class PostingTimeProvider(TimeProvider clock, Action<Action> post) : TimeProvider
{
    public override long TimestampFrequency => clock.TimestampFrequency;

    public override TimeZoneInfo LocalTimeZone => clock.LocalTimeZone;

    public override long GetTimestamp() => clock.GetTimestamp();

    public override DateTimeOffset GetUtcNow() => clock.GetUtcNow();

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        var timer = new PostedTimer(callback, state, post);
        timer.Inner = clock.CreateTimer(static posted => ((PostedTimer)posted!).Fire(), timer, dueTime, period);
        return timer;
    }

    private sealed class PostedTimer(TimerCallback callback, object? state, Action<Action> post) : ITimer
    {
        private int _setting;
        private volatile bool _ended;

        public ITimer? Inner { get; set; }

        /// <summary>A callback that was posted before the timer was set anew or ended does not count any more.</summary>
        public void Fire()
        {
            var setting = Volatile.Read(ref _setting);
            post(() =>
            {
                if (!_ended && setting == Volatile.Read(ref _setting)) callback(state);
            });
        }

        public bool Change(TimeSpan dueTime, TimeSpan period)
        {
            Interlocked.Increment(ref _setting);
            return Inner!.Change(dueTime, period);
        }

        public void Dispose()
        {
            _ended = true;
            Inner?.Dispose();
        }

        public ValueTask DisposeAsync()
        {
            Dispose();
            return default;
        }
    }
}
