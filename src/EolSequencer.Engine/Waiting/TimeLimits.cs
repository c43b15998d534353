namespace EolSequencer.Engine.Waiting;

/// <summary>The time limits of a run. Every attempt needs one and most are never reached, so they go round.</summary>
internal sealed class TimeLimits(TimeProvider time) : IDisposable
{
    private readonly Stack<Limit> _spare = new();

    /// <summary>A limit that begins now.</summary>
    /// <param name="within">Null: no limit, only the halt.</param>
    /// <param name="halted">Cancels it as well.</param>
    public Limit Begin(TimeSpan? within, CancellationToken halted)
    {
        var limit = _spare.TryPop(out var spare) ? spare : new Limit(this, time);
        limit.Begin(within, halted);
        return limit;
    }

    public void Dispose()
    {
        foreach (var limit in _spare) limit.End();
    }

    /// <summary>A token that is cancelled when its time is over or what is around it is halted, until it is disposed.</summary>
    internal sealed class Limit : IDisposable
    {
        private readonly TimeLimits _owner;
        private readonly CancellationTokenSource _source = new();
        private readonly ITimer _timer;
        private CancellationTokenRegistration _halted;
        private bool _isArmed;

        public Limit(TimeLimits owner, TimeProvider time)
        {
            _owner = owner;
            _timer = time.CreateTimer(static limit => ((Limit)limit!)._source.Cancel(), this, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
        }

        public CancellationToken Token => _source.Token;

        public void Begin(TimeSpan? within, CancellationToken halted)
        {
            _isArmed = within is not null;
            if (within is { } limit) _timer.Change(limit, Timeout.InfiniteTimeSpan);
            _halted = halted.UnsafeRegister(static limit => ((Limit)limit!)._source.Cancel(), this);
        }

        public void Dispose()
        {
            _halted.Dispose();
            if (_isArmed) _timer.Change(Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
            if (_source.TryReset()) _owner._spare.Push(this);
            else End();
        }

        public void End()
        {
            _timer.Dispose();
            _source.Dispose();
        }
    }
}
