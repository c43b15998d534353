using System.Globalization;
using EolSequencer.Devices.Transport;
using EolSequencer.Model.Waiting;
using EolSequencer.Wire.IsoTp;
using EolSequencer.Wire.Uds;

namespace EolSequencer.Devices.Diagnostics;

/// <summary>
/// Asks one control unit, one request at a time. A message that is not the answer of the request under way is counted
/// and never given to the next one.
/// </summary>
internal sealed class DiagnosticClient : ITransportListener, IDisposable
{
    private readonly DiagnosticTiming _timing;
    private readonly TransportChannel _channel;
    private readonly Exchange _exchange;
    private readonly Turnstile _turns = new();
    private readonly Action<string>? _note;
    private Exchange? _lentTo;
    private bool _hasNotedTimes;

    /// <param name="note">Told once when the unit states times that the station does not take over; null: nobody.</param>
    public DiagnosticClient(string unit, TransportLink link, TransportAddress address, DiagnosticTiming timing, Action<string>? note = null)
    {
        (Unit, _timing, _note) = (unit, timing, note);
        _channel = new TransportChannel(link, address, this);
        _exchange = new Exchange(unit, _channel, link.Time, timing, () => _channel.IsReceiving, isGroup: false);
    }

    /// <summary>The control unit's name.</summary>
    public string Unit { get; }

    /// <summary>When it was last heard; null: never.</summary>
    public long? LastHeard { get; private set; }

    /// <summary>Messages that answered no request under way.</summary>
    public int Strays => _exchange.Strays;

    /// <summary>Whether an answer is arriving at this moment.</summary>
    public bool IsReceiving => _channel.IsReceiving;

    /// <summary>Takes over the response times that the unit states for its session; null: it is back to the station's.</summary>
    public void Use(SessionTiming? stated)
    {
        if (!_timing.TakesStatedTimes)
        {
            NoteDifference(stated);
            return;
        }

        (_exchange.P2, _exchange.P2Star) = stated is { } times
            ? (times.P2 + _timing.Way, times.P2Star + _timing.Way)
            : (_timing.P2, _timing.P2Star);
    }

    private void NoteDifference(SessionTiming? stated)
    {
        if (_hasNotedTimes || stated is not { } times) return;
        var (p2, p2Star) = (times.P2 + _timing.Way, times.P2Star + _timing.Way);
        if (p2 == _timing.P2 && p2Star == _timing.P2Star) return;
        _hasNotedTimes = true;
        _note?.Invoke(string.Create(
            CultureInfo.InvariantCulture,
            $"{Unit} states times that make P2 {p2.TotalMilliseconds:0} ms and P2* {p2Star.TotalMilliseconds:0} ms with the way; the station's {_timing.P2.TotalMilliseconds:0} ms and {_timing.P2Star.TotalMilliseconds:0} ms hold"));
    }

    /// <summary>Sends a request and waits for its answer.</summary>
    /// <exception cref="OperationCanceledException">The caller gave up.</exception>
    public ValueTask<ExchangeEnd> RequestAsync(ReadOnlyMemory<byte> request, CancellationToken cancel) =>
        _turns.TryEnter(out var turn) ? _exchange.AskAsync(request, turn, cancel) : RequestInTurnAsync(request, cancel);

    private async ValueTask<ExchangeEnd> RequestInTurnAsync(ReadOnlyMemory<byte> request, CancellationToken cancel) =>
        await _exchange.AskAsync(request, await _turns.EnterAsync(cancel), cancel);

    /// <summary>Waits for the unit's turn, so that nobody else asks it meanwhile.</summary>
    public ValueTask<Turnstile.Turn> EnterAsync(CancellationToken cancel) => _turns.EnterAsync(cancel);

    /// <summary>What arrives goes to the exchange of a group; null: to the unit's own again. Only for whoever has the turn.</summary>
    public void LendTo(Exchange? exchange) => _lentTo = exchange;

    public void Heard(long stamp) => LastHeard = stamp;

    public void Received(ReadOnlyMemory<byte> message, long stamp) => (_lentTo ?? _exchange).Take(message, stamp);

    public void Aborted(TransportResult result, string detail, long stamp) => (_lentTo ?? _exchange).Abort(result, detail, stamp);

    public void Dispose()
    {
        _channel.Dispose();
        _exchange.Dispose();
    }
}
