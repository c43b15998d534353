using EolSequencer.Devices.Transport;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Waiting;
using EolSequencer.Wire.Can;
using EolSequencer.Wire.IsoTp;
using EolSequencer.Wire.Uds;

namespace EolSequencer.Devices.Diagnostics;

/// <summary>
/// Asks one control unit, one request at a time. A message that is not the answer of the request under way is counted
/// and never given to the next one.
/// </summary>
internal sealed class DiagnosticClient : ITransportListener, IDisposable
{
    private readonly TransportChannel _channel;
    private readonly TimeProvider _time;
    private readonly DiagnosticTiming _timing;
    private readonly Turnstile _turns = new();
    private TaskCompletionSource<Arrival>? _arrival;
    private ReadOnlyMemory<byte> _request;
    private TimeSpan _p2;
    private TimeSpan _p2Star;

    public DiagnosticClient(string unit, ICanPort port, TimeProvider time, TransportAddress address, DiagnosticTiming timing)
    {
        (Unit, _time, _timing, _p2, _p2Star) = (unit, time, timing, timing.P2, timing.P2Star);
        _channel = new TransportChannel(port, time, address, new TransportOptions(), new TransportTimers(), this);
    }

    /// <summary>The control unit's name.</summary>
    public string Unit { get; }

    /// <summary>When it was last heard; null: never.</summary>
    public long? Heard { get; private set; }

    /// <summary>Messages that answered no request under way.</summary>
    public int Strays { get; private set; }

    /// <summary>What a message is to the request under way.</summary>
    private readonly record struct Arrival(AnswerKind Kind, NegativeCode Code, ReadOnlyMemory<byte> Message, long Stamp, string? Trouble);

    /// <summary>Takes over the response times that the unit stated for its session.</summary>
    public void Use(TimeSpan p2, TimeSpan p2Star) => (_p2, _p2Star) = (p2 + _timing.Way, p2Star + _timing.Way);

    /// <summary>Sends a request and waits for its answer.</summary>
    /// <exception cref="OperationCanceledException">The caller gave up.</exception>
    public async ValueTask<ExchangeEnd> RequestAsync(ReadOnlyMemory<byte> request, CancellationToken cancel)
    {
        using var turn = await _turns.EnterAsync(cancel);
        try
        {
            for (var attempt = 1; ; attempt++)
            {
                var end = await OnceAsync(request, cancel);
                if (end.Code != NegativeCode.BusyRepeatRequest || attempt == _timing.MostTries) return end;
                await Pause.ForAsync(_timing.BusyPause, _time, cancel);
            }
        }
        finally
        {
            _arrival = null;
            _request = default;
        }
    }

    public void Began(long stamp)
    {
        Heard = stamp;
        _began = true;
    }

    public void Received(ReadOnlyMemory<byte> message, long stamp)
    {
        Heard = stamp;
        var answer = _arrival is null ? default : ResponseMatch.Of(_request.Span, message.Span);
        if (answer.Kind == AnswerKind.Stray)
        {
            Strays++;
            return;
        }

        _arrival!.TrySetResult(new Arrival(answer.Kind, answer.Code, message, stamp, null));
    }

    public void Aborted(TransportResult result, string detail, long stamp) =>
        _arrival?.TrySetResult(new Arrival(AnswerKind.Stray, NegativeCode.None, default, stamp, $"{TransportWords.Of(result)}, {detail}"));

    public void Dispose() => _channel.Dispose();

    private bool _began;

    private async ValueTask<ExchangeEnd> OnceAsync(ReadOnlyMemory<byte> request, CancellationToken cancel)
    {
        _request = request;
        _began = false;
        _arrival = NewArrival();
        var sent = await _channel.SendAsync(request, cancel);
        if (!sent.IsOk) return NotSent(request, sent);
        var since = sent.Stamp;
        for (var pending = 0; ; pending++)
        {
            var arrival = await ArrivalAsync(since, pending == 0 ? _p2 : _p2Star, cancel);
            if (arrival is not { } came) return Silent(request, pending);
            if (came.Trouble is { } trouble) return Failed(request, MissingCause.ShortAnswer, came.Stamp, trouble);
            switch (came.Kind)
            {
                case AnswerKind.Positive:
                    return new ExchangeEnd { Response = came.Message, Stamp = came.Stamp };
                case AnswerKind.Pending when pending < _timing.MostPending:
                    _began = false;
                    _arrival = NewArrival();
                    since = came.Stamp;
                    continue;
                default:
                    return Failed(request, MissingCause.Refused, came.Stamp, NegativeResponse.Describe(came.Code)) with { Code = came.Code };
            }
        }
    }

    /// <summary>The next message for the request; null when none has begun within the limit.</summary>
    private async ValueTask<Arrival?> ArrivalAsync(long since, TimeSpan limit, CancellationToken cancel)
    {
        var arrival = _arrival!;
        if (!arrival.Task.IsCompleted)
        {
            var left = limit - _time.GetElapsedTime(since);
            using var timer = _time.CreateTimer(
                _ =>
                {
                    // A message that has begun in time may take longer to complete; its own timers watch it.
                    if (!_began) arrival.TrySetResult(default);
                },
                null, left > TimeSpan.Zero ? left : TimeSpan.Zero, Timeout.InfiniteTimeSpan);
            using var outer = cancel.Register(() => arrival.TrySetCanceled(cancel));
            await arrival.Task;
        }

        var came = await arrival.Task;
        return came.Kind == AnswerKind.Stray && came.Trouble is null ? null : came;
    }

    private static TaskCompletionSource<Arrival> NewArrival() => new(TaskCreationOptions.RunContinuationsAsynchronously);

    private ExchangeEnd Silent(ReadOnlyMemory<byte> request, int pending)
    {
        _channel.Reset();
        var timer = pending == 0 ? $"P2 ({_p2.TotalMilliseconds:0} ms)" : $"P2* ({_p2Star.TotalMilliseconds:0} ms) after {pending} x \"response pending\"";
        return Failed(request, MissingCause.Silent, _time.GetTimestamp(), $"no answer within {timer}");
    }

    private ExchangeEnd NotSent(ReadOnlyMemory<byte> request, SendOutcome sent) => sent.Link == LinkState.Up
        ? Failed(request, MissingCause.Silent, sent.Stamp, $"{TransportWords.Of(sent.Result)}{(sent.Detail is null ? "" : ", " + sent.Detail)}")
        : Failed(request, MissingCause.LinkDown, sent.Stamp, "the request did not go out, the link is down");

    private ExchangeEnd Failed(ReadOnlyMemory<byte> request, MissingCause cause, long stamp, string what) =>
        new() { Missing = cause, Stamp = stamp, Detail = $"{Unit}: {Convert.ToHexString(request.Span)}: {what}" };
}
