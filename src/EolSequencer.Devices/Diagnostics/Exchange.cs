using System.Runtime.CompilerServices;
using EolSequencer.Devices.Transport;
using EolSequencer.Devices.Waiting;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Waiting;
using EolSequencer.Wire.Can;
using EolSequencer.Wire.IsoTp;
using EolSequencer.Wire.Uds;

namespace EolSequencer.Devices.Diagnostics;

/// <summary>
/// One request after the other to a control unit, or to a group of which the first positive answer counts: what every
/// message means to the request under way, and when its time is over.
/// </summary>
/// <remarks>
/// A request that was given up may still be answered. When the next one gets an answer that might be that late one, it
/// is held back for one more P2: if another follows, that is the one; if none follows, the first was. So a late answer
/// costs time once and is never taken for a fresh one by a unit that keeps to P2; a silent unit costs nothing more.
/// </remarks>
internal sealed class Exchange : IDisposable
{
    private readonly string _peer;
    private readonly TransportChannel _channel;
    private readonly TimeProvider _time;
    private readonly DiagnosticTiming _timing;
    private readonly Func<bool> _isReceiving;
    private readonly bool _isGroup;
    private readonly Signal<ExchangeEnd> _ended = new();
    private readonly ITimer _limit;
    private readonly OwedAnswers _owed = new();

    private ReadOnlyMemory<byte> _request;
    private bool _isOpen;
    private bool _isSent;
    private bool _mayBeOut;
    private bool _isAnswered;
    private bool _isServed;
    private bool _isOverdue;
    private ExchangeEnd? _held;
    private ExchangeEnd? _early;
    private long _since;
    private TimeSpan _wait;
    private int _pending;
    private int _renewals;
    private int _strays;
    private ReadOnlyMemory<byte> _stray;

    /// <param name="peer">Who is asked, for people.</param>
    /// <param name="channel">Where requests go out.</param>
    /// <param name="isReceiving">Whether an answer is arriving at this moment.</param>
    /// <param name="isGroup">Several may answer: a refusal counts only when no positive answer comes in time.</param>
    public Exchange(string peer, TransportChannel channel, TimeProvider time, DiagnosticTiming timing, Func<bool> isReceiving, bool isGroup)
    {
        (_peer, _channel, _time, _timing, _isReceiving, _isGroup) = (peer, channel, time, timing, isReceiving, isGroup);
        (P2, P2Star) = (timing.P2, timing.P2Star);
        _limit = time.CreateTimer(static exchange => ((Exchange)exchange!).Expire(), this, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
    }

    /// <summary>From the confirmation of a request to the first frame of the answer.</summary>
    public TimeSpan P2 { get; set; }

    /// <summary>The same after "response pending".</summary>
    public TimeSpan P2Star { get; set; }

    /// <summary>Messages that answered no request under way.</summary>
    public int Strays { get; private set; }

    /// <summary>Sends a request and waits for its answer; one at a time.</summary>
    /// <param name="turn">Given back at the end.</param>
    /// <exception cref="OperationCanceledException">The caller gave up.</exception>
    [AsyncMethodBuilder(typeof(PoolingAsyncValueTaskMethodBuilder<>))]
    public async ValueTask<ExchangeEnd> AskAsync(ReadOnlyMemory<byte> request, Turnstile.Turn turn, CancellationToken cancel)
    {
        using var ours = turn;
        for (var tries = 1; ; tries++)
        {
            Open(request);
            ExchangeEnd end;
            CancellationTokenRegistration giveUp = default;
            try
            {
                var sent = await _channel.SendAsync(request, cancel);
                if (!sent.IsOk) return NotSent(sent);
                Confirm(sent.Stamp);
                end = await _ended.WaitAsync(cancel, out giveUp);
            }
            finally
            {
                giveUp.Dispose();
                Close();
            }

            if (end.Code != NegativeCode.BusyRepeatRequest || tries == _timing.MostTries) return end;
            await Pause.ForAsync(_timing.BusyPause, _time, cancel);
        }
    }

    /// <summary>A message has arrived from where an answer is due.</summary>
    public void Take(ReadOnlyMemory<byte> message, long stamp)
    {
        var answer = _isOpen ? ResponseMatch.Of(_request.Span, message.Span) : default;
        if (answer.Kind == AnswerKind.Pending)
        {
            TakePending(message, stamp);
            return;
        }

        var isOwed = _owed.Settle(message.Span);
        if (answer.Kind == AnswerKind.Stray)
        {
            Strays++;
            _strays++;
            _stray = message;
            GoOnAfterStray(stamp);
            return;
        }

        var end = answer.Kind == AnswerKind.Positive
            ? new ExchangeEnd { Response = message, Stamp = stamp }
            : Failed(MissingCause.Refused, stamp, NegativeResponse.Describe(answer.Code)) with { Code = answer.Code, Response = message };
        if (isOwed && !SaysNothing) HoldBack(end);
        else if (_isGroup && _held is { IsPositive: true }) HoldBack(end);
        else if (_isGroup && !end.IsPositive) _held ??= end;
        else Decide(end);
    }

    /// <summary>A message that had begun to arrive will not be complete.</summary>
    public void Abort(TransportResult result, string detail, long stamp)
    {
        if (!_isOpen) return;
        if (result == TransportResult.UnexpectedFrame || !_owed.IsEmpty)
        {
            GoOnAfterStray(stamp);
            return;
        }

        var end = Failed(MissingCause.ShortAnswer, stamp, $"{TransportWords.Of(result)}, {detail}");
        if (_isGroup) _held ??= end;
        else Decide(end);
    }

    public void Dispose() => _limit.Dispose();

    /// <summary>Whether an answer tells no more than that the unit is there, so that a late one is as good as any.</summary>
    private bool SaysNothing => _request.Span[0] == (byte)ServiceId.TesterPresent;

    private void Open(ReadOnlyMemory<byte> request)
    {
        _request = request;
        (_isOpen, _isSent, _mayBeOut) = (true, false, true);
        (_isAnswered, _isServed, _isOverdue) = (false, false, false);
        (_held, _early, _since, _wait) = (null, null, long.MinValue, P2);
        (_pending, _renewals, _strays, _stray) = (0, 0, 0, default);
        _ended.Reset();
        _owed.Forget(_time.GetTimestamp());
    }

    /// <summary>The request is out. Some links report answers before; what was held back from before it cannot be its own.</summary>
    private void Confirm(long stamp)
    {
        _isSent = true;
        if (_early is { } end)
        {
            _ended.TrySet(end);
            return;
        }

        if (_held is { } held && held.Stamp <= stamp) _held = null;
        if (_since <= stamp) Wait(stamp, P2);
        else Wait(_since, _wait);
    }

    private void Close()
    {
        if (_isServed) _owed.Clear();
        else if (_mayBeOut && !_isAnswered) _owed.Add(_request, _time.GetTimestamp() + (long)(P2Star.TotalSeconds * _time.TimestampFrequency));
        if (_isSent) _limit.Change(Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
        _isOpen = false;
    }

    private void TakePending(ReadOnlyMemory<byte> message, long stamp)
    {
        _held = null;
        if (++_pending > _timing.MostPending)
        {
            const NegativeCode Code = NegativeCode.RequestCorrectlyReceivedResponsePending;
            Decide(Failed(MissingCause.Refused, stamp, $"{NegativeResponse.Describe(Code)}, {_pending} times") with { Code = Code, Response = message });
            return;
        }

        Wait(stamp, P2Star);
    }

    private void HoldBack(ExchangeEnd end)
    {
        _held = end;
        if (++_renewals > _timing.MostPending) Decide(end);
        else Wait(end.Stamp, P2);
    }

    /// <summary>A message that was no answer took the line beyond the time limit: only now could the answer come.</summary>
    private void GoOnAfterStray(long stamp)
    {
        if (!_isOverdue) return;
        _isOverdue = false;
        if (++_renewals > _timing.MostPending) EndByTime();
        else Wait(stamp, P2);
    }

    private void Wait(long since, TimeSpan wait)
    {
        (_since, _wait, _isOverdue) = (since, wait, false);
        if (!_isSent) return;
        var left = wait - _time.GetElapsedTime(since);
        _limit.Change(left > TimeSpan.Zero ? left : TimeSpan.Zero, Timeout.InfiniteTimeSpan);
    }

    /// <summary>A message that has begun in time may take longer to complete; its own timer watches it.</summary>
    private void Expire()
    {
        if (_isReceiving()) _isOverdue = true;
        else EndByTime();
    }

    private void EndByTime()
    {
        if (_held is { } held) Decide(held);
        else _ended.TrySet(Silent());
    }

    private void Decide(ExchangeEnd end)
    {
        _isAnswered = true;
        _isServed = end.Code != NegativeCode.BusyRepeatRequest;
        if (_isSent) _ended.TrySet(end);
        else _early ??= end;
    }

    private ExchangeEnd Silent()
    {
        var timer = _pending == 0
            ? $"P2 ({P2.TotalMilliseconds:0} ms)"
            : $"P2* ({P2Star.TotalMilliseconds:0} ms) after {_pending} x \"response pending\"";
        var strays = _strays == 0 ? "" : $"; {_strays} x something else, the last {Convert.ToHexString(_stray.Span[..Math.Min(_stray.Length, 16)])}";
        return _channel.IsUp
            ? Failed(MissingCause.Silent, _time.GetTimestamp(), $"no answer within {timer}{strays}")
            : Failed(MissingCause.LinkDown, _time.GetTimestamp(), $"no answer within {timer}{strays}; the link is down");
    }

    /// <summary>A frame that was taken back may be on the wire all the same; a unit may refuse what it has heard only in part.</summary>
    private ExchangeEnd NotSent(SendOutcome sent)
    {
        var isTakenBack = sent is { Result: TransportResult.TimeoutA, Link: LinkState.Up };
        _mayBeOut = isTakenBack;
        if (_early is { } end) return end;
        if (sent.Link != LinkState.Up) return Failed(MissingCause.LinkDown, sent.Stamp, "the request did not go out, the link is down");
        return Failed(isTakenBack ? MissingCause.LinkDown : MissingCause.Silent, sent.Stamp, $"{TransportWords.Of(sent.Result)}, {sent.Detail}");
    }

    private ExchangeEnd Failed(MissingCause cause, long stamp, string what) =>
        new() { Missing = cause, Stamp = stamp, Detail = $"{_peer}: {Convert.ToHexString(_request.Span)}: {what}" };
}
