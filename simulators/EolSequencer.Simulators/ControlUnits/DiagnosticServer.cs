using EolSequencer.Simulators.ControlUnits.Services;
using EolSequencer.Simulators.Time;
using EolSequencer.Wire.Uds;

namespace EolSequencer.Simulators.ControlUnits;

/// <summary>
/// Takes one request at a time, needs its time for it, asks for patience when that is long, and answers. Falls back to
/// the default session when the tester has kept silent too long.
/// </summary>
internal sealed class DiagnosticServer(ControlUnit unit, ISchedule schedule) : IDue
{
    /// <summary>S3 of the server (ISO 14229-2).</summary>
    public static readonly TimeSpan S3 = TimeSpan.FromMilliseconds(5000);

    /// <summary>When a unit first asks for patience: inside P2, with a reserve for the way.</summary>
    public static readonly TimeSpan FirstPending = TimeSpan.FromMilliseconds(42);

    /// <summary>Between two of them: at least 0.3 × P2* and less than P2* (ISO 14229-2:2013, table 4).</summary>
    public static readonly TimeSpan NextPending = TimeSpan.FromMilliseconds(2500);

    private const int Answer = 0;
    private const int Pending = 1;
    private const int SessionCheck = 2;
    private const byte TesterPresentService = (byte)ServiceId.TesterPresent;

    private ReadOnlyMemory<byte> _request;
    private bool _isForGroup;
    private bool _isBusy;
    private bool _hasAskedForPatience;
    private bool _restartsAfterwards;
    private int _number;
    private TimeSpan _quietSince;
    private bool _isSessionWatched;

    /// <summary>Forgets the request under way.</summary>
    public void Forget()
    {
        _isBusy = _restartsAfterwards = false;
        _number++;
    }

    /// <summary>Takes a request.</summary>
    public void Take(ReadOnlyMemory<byte> request, bool isForGroup)
    {
        var bytes = request.Span;
        if (bytes is [TesterPresentService, 0x80])
        {
            _quietSince = schedule.Now;
            return;
        }

        if (isForGroup && !ServiceDesk.Knows(unit, bytes[0])) return; // silent in a group anyway, so no work either

        if (_isBusy)
        {
            // A unit that works on a request has no ear for a group, and tells the one tester to come again.
            if (!isForGroup) unit.Transport.Send(NegativeResponse.Make(bytes[0], NegativeCode.BusyRepeatRequest));
            return;
        }

        (_request, _isForGroup, _isBusy, _hasAskedForPatience) = (request, isForGroup, true, false);
        var needed = (ServiceDesk.IsServed(unit, bytes[0]) ? WorkTime.Of(bytes) : TimeSpan.Zero) + unit.NextAnswerTime() + unit.Quirks.ExtraDelay;
        var asks = unit.Quirks.PendsForEver || (needed > FirstPending && unit.Quirks.ExtraDelay == TimeSpan.Zero);
        if (asks) At(FirstPending, Pending);
        if (!unit.Quirks.PendsForEver) At(needed, Answer);
    }

    /// <summary>The last frame of the response is out.</summary>
    public void SendingEnded()
    {
        _quietSince = schedule.Now;
        if (!_restartsAfterwards) return;
        _restartsAfterwards = false;
        unit.Restart();
    }

    /// <inheritdoc/>
    public void Due(int what)
    {
        if (what == SessionCheck)
        {
            CheckSession();
            return;
        }

        if (what >> 2 != _number || !_isBusy) return;
        if ((what & 3) == Pending)
        {
            _hasAskedForPatience = true;
            unit.Transport.Send(NegativeResponse.Make(_request.Span[0], NegativeCode.RequestCorrectlyReceivedResponsePending));
            At(NextPending, Pending);
            return;
        }

        _isBusy = false;
        _number++;
        Finish(Serve());
    }

    /// <summary>Watches for a silent tester as long as the session is not the default one.</summary>
    public void SessionChanged()
    {
        _quietSince = schedule.Now;
        if (_isSessionWatched || unit.Session.IsDefault) return;
        _isSessionWatched = true;
        schedule.At(_quietSince + S3, this, SessionCheck);
    }

    private Reply Serve()
    {
        if (unit.Quirks.BusyAnswers > 0)
        {
            unit.Quirks.BusyAnswers--;
            return NegativeCode.BusyRepeatRequest;
        }

        return ServiceDesk.Serve(unit, _request);
    }

    private void Finish(Reply reply)
    {
        _restartsAfterwards = reply.ThenRestarts;
        if (IsToldNothing(reply))
        {
            SendingEnded();
            return;
        }

        unit.Transport.Send(reply.Message ?? NegativeResponse.Make(_request.Span[0], reply.Refusal));
    }

    // After "response pending" the final answer is sent whatever it is (ISO 14229-1, annex A.1).
    private bool IsToldNothing(Reply reply)
    {
        if (reply.Message is null && reply.Refusal == NegativeCode.None) return true;
        if (_hasAskedForPatience) return false;
        return reply.Message is null
            ? _isForGroup && NegativeResponse.IsSilentInGroup(reply.Refusal)
            : SubFunction.IsPositiveSuppressed(_request.Span);
    }

    private void CheckSession()
    {
        _isSessionWatched = false;
        if (unit.Session.IsDefault) return;
        var isTalking = _isBusy || unit.Transport.IsSending;
        if (!isTalking && schedule.Now - _quietSince >= S3)
        {
            unit.LeaveSession();
            return;
        }

        _isSessionWatched = true;
        schedule.At((isTalking ? schedule.Now : _quietSince) + S3, this, SessionCheck);
    }

    private void At(TimeSpan wait, int what) => schedule.At(schedule.Now + wait, this, (_number << 2) | what);
}
