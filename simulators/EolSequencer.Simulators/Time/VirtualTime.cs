using System.Diagnostics.CodeAnalysis;

namespace EolSequencer.Simulators.Time;

/// <summary>
/// A clock without hands: time jumps to the next thing that is due, and everything, timers and continuations alike,
/// happens on the thread that called <see cref="Run(Func{Task}, TimeSpan?)"/>.
/// </summary>
/// <remarks>
/// Order: what is due earlier first; at equal moments what was scheduled earlier; all continuations that a happening
/// has released come before the next happening. So the same work gives the same order every time. A timer's callback
/// does not see the async-local values of its creator.
/// </remarks>
public sealed class VirtualTime : TimeProvider, ISchedule
{
    /// <summary>How far one call may let time run when it does not say so itself.</summary>
    public static readonly TimeSpan DefaultHorizon = TimeSpan.FromDays(1);

    /// <summary>How many happenings and continuations may come at one and the same moment.</summary>
    public const int MostAtOneMoment = 10_000_000;

    private const string ThreadLeavers = 
        "Task.Run, CancelAsync, ConfigureAwait(false), real input and output, WhenAny, WhenAll or WaitAsync of a source with RunContinuationsAsynchronously";

    private readonly DueQueue _due = new();

    // What is due at this very moment needs no place among the later ones; half of a bus's happenings are.
    private readonly Queue<(IDue Target, int What, long Number)> _dueNow = new();
    private readonly Queue<Continuation> _ready = new();
    private readonly VirtualContext _context;
    private readonly DateTimeOffset _start;
    private Thread? _thread;
    private TimeSpan _now;
    private long _placed;
    private int _atThisMoment;
    private volatile bool _cameFromElsewhere;

    /// <summary>A clock that stands until something runs it.</summary>
    /// <param name="start">Wall time at the start; the zone is ignored, local time is UTC.</param>
    public VirtualTime(DateTimeOffset start)
    {
        _start = start.ToUniversalTime();
        _context = new VirtualContext(this);
    }

    /// <summary>Virtual time since the start, exact to 100 ns; the clock's timestamp counts the same.</summary>
    public TimeSpan Now => _now;

    /// <inheritdoc/>
    public override long TimestampFrequency => TimeSpan.TicksPerSecond;

    /// <inheritdoc/>
    public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

    /// <inheritdoc/>
    public override long GetTimestamp() => _now.Ticks;

    /// <inheritdoc/>
    public override DateTimeOffset GetUtcNow() => _start + _now;

    /// <inheritdoc/>
    public long Stamp(TimeSpan moment) => moment.Ticks;

    /// <inheritdoc/>
    public TimeSpan Moment(long stamp) => new(stamp);

    /// <inheritdoc/>
    public void At(TimeSpan due, IDue target, int what = 0) => At(due, NextPlace(), target, what);

    /// <summary>The next place among things of one moment.</summary>
    internal long NextPlace() => _placed++;

    /// <summary>The same as <see cref="At(TimeSpan, IDue, int)"/> with a place that was taken before.</summary>
    internal void At(TimeSpan due, long place, IDue target, int what)
    {
        ArgumentNullException.ThrowIfNull(target);
        if (_thread is not null && _thread != Thread.CurrentThread)
        {
            throw new InvalidOperationException($"virtual time belongs to one thread, this is another ({ThreadLeavers})");
        }

        if (due <= _now) _dueNow.Enqueue((target, what, place));
        else _due.Add(due, place, target, what);
    }

    /// <summary>Lets a callback run at a moment, counted from the start; one that has passed is now.</summary>
    public void At(TimeSpan due, Action callback) => At(due, new Callback(callback));

    /// <inheritdoc/>
    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        ArgumentNullException.ThrowIfNull(callback);
        var timer = new VirtualTimer(this, callback, state);
        timer.Change(dueTime, period);
        return timer;
    }

    /// <summary>Runs asynchronous work to its end and lets time jump on whenever the work waits.</summary>
    /// <param name="work">The work; it stays on this thread as long as nothing in it leaves it.</param>
    /// <param name="horizon">How long the work may take in virtual time; <see cref="DefaultHorizon"/> when left out.</param>
    /// <exception cref="VirtualDeadlock">
    /// The work waits although nothing is due any more, or goes beyond the horizon, or never lets the clock go on.
    /// </exception>
    public void Run(Func<Task> work, TimeSpan? horizon = null) => RunToEnd(work, horizon).GetAwaiter().GetResult();

    /// <summary>Runs asynchronous work to its end and gives its result.</summary>
    /// <inheritdoc cref="Run(Func{Task}, TimeSpan?)"/>
    public T Run<T>(Func<Task<T>> work, TimeSpan? horizon = null) => RunToEnd(work, horizon).GetAwaiter().GetResult();

    /// <summary>Lets a span of time pass with everything that is due in it, its end included.</summary>
    public void Advance(TimeSpan span)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(span, TimeSpan.Zero);
        var end = _now + span;
        Pump(until: end, begin: null, hasEnded: null);
        MoveTo(end);
    }

    internal void Post(SendOrPostCallback callback, object? state)
    {
        if (Thread.CurrentThread != _thread)
        {
            // Taking it would make the order depend on the machine. It is dropped; the work then stands still and
            // the message says why.
            _cameFromElsewhere = true;
            return;
        }

        _ready.Enqueue(new Continuation(callback, state));
    }

    private TTask RunToEnd<TTask>(Func<TTask> work, TimeSpan? horizon)
        where TTask : Task
    {
        ArgumentNullException.ThrowIfNull(work);
        TTask? task = null;
        Pump(until: _now + (horizon ?? DefaultHorizon), begin: () => task = work(), hasEnded: () => task!.IsCompleted);
        return task!;
    }

    private void Pump(TimeSpan until, Action? begin, Func<bool>? hasEnded)
    {
        if (_thread is not null) throw new InvalidOperationException("this virtual time is already running");

        var outside = SynchronizationContext.Current;
        _thread = Thread.CurrentThread;
        SynchronizationContext.SetSynchronizationContext(_context);
        try
        {
            begin?.Invoke();
            while (hasEnded is null || !hasEnded())
            {
                if (Step(until)) continue;
                if (hasEnded is null) return;
                throw new VirtualDeadlock(_now, WhyNothingHappens());
            }
        }
        finally
        {
            SynchronizationContext.SetSynchronizationContext(outside);
            _thread = null;
        }
    }

    private bool Step(TimeSpan until)
    {
        if (_ready.TryDequeue(out var continuation))
        {
            CountAtThisMoment();
            continuation.Run();
            return true;
        }

        while (TryTakeNext(until, out var due, out var target, out var what))
        {
            // A timer that was put off neither moves the clock nor counts.
            if (target is VirtualTimer timer && !timer.Comes(what, due)) continue;
            MoveTo(due);
            CountAtThisMoment();
            target.Due(what);
            return true;
        }

        return false;
    }

    /// <summary>Takes what is due next; false when there is nothing, or nothing up to the end.</summary>
    private bool TryTakeNext(TimeSpan until, out TimeSpan due, [NotNullWhen(true)] out IDue? target, out int what)
    {
        var isLater = _due.TryPeek(out due, out var number);
        if (_dueNow.TryPeek(out var now) && !(isLater && due == _now && number < now.Number))
        {
            due = _now;
            (target, what, _) = _dueNow.Dequeue();
            return true;
        }

        (target, what) = (null, 0);
        if (!isLater || due > until) return false;
        (target, what) = _due.Take();
        return true;
    }

    private void MoveTo(TimeSpan moment)
    {
        if (moment == _now) return;
        _now = moment;
        _atThisMoment = 0;
    }

    private void CountAtThisMoment()
    {
        if (++_atThisMoment > MostAtOneMoment)
        {
            throw new VirtualDeadlock(_now, $"more than {MostAtOneMoment} things happen at this one moment");
        }
    }

    private string WhyNothingHappens() =>
        _cameFromElsewhere ? $"a continuation came from another thread ({ThreadLeavers})"
        : _due.Count + _dueNow.Count == 0 ? $"nothing is due any more and the work has not ended; it waits for what never comes, or for another thread ({ThreadLeavers})"
        : "the work has not ended within the horizon";

    private readonly struct Continuation(SendOrPostCallback callback, object? state)
    {
        public void Run() => callback(state);
    }

    private sealed class Callback(Action callback) : IDue
    {
        public void Due(int what) => callback();
    }
}
