using EolSequencer.Wire.Can;

namespace EolSequencer.Devices.Can;

/// <summary>
/// Frames on their way to a serial-line CAN interface. One is under way at a time, until the interface says that it has taken it; one
/// that it refuses, because its own queue is full, is handed over again.
/// </summary>
internal sealed class SerialCanQueue : IDisposable
{
    /// <summary>Time before a refused frame is handed over again.</summary>
    public static readonly TimeSpan RefusedPause = TimeSpan.FromMilliseconds(2);

    /// <summary>How long a frame that nobody waits for any more may hold up the next one: its answer may still come.</summary>
    public static readonly TimeSpan OwedLimit = TimeSpan.FromMilliseconds(1000);

    private readonly TimeProvider _time;
    private readonly bool _answers;
    private readonly Func<CanFrame, ValueTask<string?>> _write;
    private readonly BusHealth _health;
    private readonly Queue<QueuedFrame> _waiting = [];
    private readonly ITimer _again;
    private readonly ITimer _owed;
    private QueuedFrame? _underWay;
    private bool _isClosed;

    /// <param name="answers">False: a frame counts as sent once the serial port has it.</param>
    /// <param name="write">Hands a frame to the serial line; gives why that did not go, or null.</param>
    public SerialCanQueue(TimeProvider time, bool answers, Func<CanFrame, ValueTask<string?>> write, BusHealth health)
    {
        (_time, _answers, _write, _health) = (time, answers, write, health);
        _again = time.CreateTimer(static queue => ((SerialCanQueue)queue!).HandOver(), this, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
        _owed = time.CreateTimer(static queue => ((SerialCanQueue)queue!).GiveUpOwed(), this, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
    }

    /// <summary>Lets a frame go out behind those that wait.</summary>
    public ValueTask<Transmission> SendAsync(in CanFrame frame, CancellationToken cancel)
    {
        var queued = new QueuedFrame(frame);
        _waiting.Enqueue(queued);
        var sending = queued.WaitAsync(cancel);
        if (_underWay is null) SendNext();
        return sending;
    }

    /// <summary>The interface has taken the frame under way.</summary>
    public void Confirm(long stamp)
    {
        if (_underWay is not { } frame) return;
        Stop(_owed);
        _underWay = null;
        frame.End(Transmission.Confirmed(stamp));
        if (_underWay is null) SendNext();
    }

    /// <summary>The interface has refused the frame under way.</summary>
    public void Refuse()
    {
        if (_underWay is null) return;
        _health.CountFullQueue();
        _again.Change(RefusedPause, Timeout.InfiniteTimeSpan);
    }

    /// <summary>Tells all who wait how it ended.</summary>
    public void EndAll(Transmission how)
    {
        Stop(_again);
        Stop(_owed);
        var all = _waiting.ToArray();
        _waiting.Clear();
        var underWay = _underWay;
        _underWay = null;
        underWay?.End(how);
        foreach (var frame in all) frame.End(how);
    }

    public void Dispose()
    {
        _isClosed = true;
        _again.Dispose();
        _owed.Dispose();
        EndAll(new Transmission(LinkState.Down, _time.GetTimestamp()));
    }

    private void SendNext()
    {
        while (_waiting.TryDequeue(out var next))
        {
            if (next.IsOver) continue;
            _underWay = next;
            HandOver();
            return;
        }
    }

    // "async void" lets a broken assumption reach the run's thread; trouble of the line is told by the line.
    private async void HandOver()
    {
        if (_underWay is not { } frame || _isClosed) return;
        if (frame.IsOver)
        {
            // Refused before and given up since: it never went out.
            _underWay = null;
            SendNext();
            return;
        }

        _owed.Change(OwedLimit, Timeout.InfiniteTimeSpan);
        var fault = await _write(frame.Frame);
        if (fault is null && !_answers && _underWay == frame) Confirm(_time.GetTimestamp());
    }

    private void GiveUpOwed()
    {
        if (_underWay is not { } frame) return;
        if (!frame.IsOver)
        {
            // Somebody still waits, so the limit is theirs.
            _owed.Change(OwedLimit, Timeout.InfiniteTimeSpan);
            return;
        }

        _underWay = null;
        SendNext();
    }

    private static void Stop(ITimer timer) => timer.Change(Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
}
