using System.Collections.Immutable;
using EolSequencer.Engine.Planning;
using EolSequencer.Engine.Running;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Traces;

namespace EolSequencer.Engine.Capturing;

/// <summary>
/// Keeps the readings of one channel with the stamps of their reception. A missing reading opens a gap that the next value
/// closes; nothing is made up for it.
/// </summary>
internal sealed class ChannelRecorder : IReadingListener, IDisposable
{
    /// <summary>The most readings of one trace: a signal of 10 ms over nearly three hours.</summary>
    public const int MostPoints = 1_000_000;

    private readonly ImmutableArray<TracePoint>.Builder _values = ImmutableArray.CreateBuilder<TracePoint>();
    private readonly ImmutableArray<SeriesPoint>.Builder _record = ImmutableArray.CreateBuilder<SeriesPoint>();
    private readonly ImmutableArray<TraceGap>.Builder _gaps = ImmutableArray.CreateBuilder<TraceGap>();
    private readonly RunServices _run;
    private readonly PlannedCapture _capture;
    private readonly long _begun;
    private readonly long _origin;
    private readonly TimeSpan? _thinned;
    private readonly IDisposable _subscription;
    private TraceGap? _open;
    private long _turn = -1;
    private bool _isFull;

    public ChannelRecorder(RunServices run, PlannedCapture capture, long begun)
    {
        (_run, _capture, _begun) = (run, capture, begun);
        _origin = run.Log.MicrosecondsAt(begun);

        // A polled channel is asked that often; a broadcast signal comes when it comes, and one reading of each turn is kept.
        _thinned = capture.Channel.Source is ChannelSource.Broadcast ? capture.Every : null;
        _subscription = run.Device(capture.Role).Device.Watch(
            new ReadRequest(capture.Channel, capture.Index, begun) { EveryArrival = true },
            capture.Every ?? capture.Channel.Every ?? RunServices.UsualPoll, this);
    }

    public void Received(in Reading reading)
    {
        if (_isFull || reading.Stamp < _begun) return;
        var at = _run.Log.MicrosecondsAt(reading.Stamp) - _origin;
        if (reading.Value is null)
        {
            Keep(at, reading);
            _open ??= Gap(at, reading.Missing is { } cause ? $"{cause.Word()}{(reading.Detail is null ? "" : ": " + reading.Detail)}" : "no value");
            return;
        }

        if (_open is null && !IsItsTurn(at)) return;
        if (_values.Count == MostPoints)
        {
            _isFull = true;
            _open = Gap(at, $"it has more than {MostPoints} readings");
            return;
        }

        if (_open is { } gap) _gaps.Add(gap with { To = at });
        _open = null;
        Keep(at, reading);
        _values.Add(new TracePoint(at, reading.Value));
    }

    /// <summary>The trace, and what the record keeps of it.</summary>
    /// <param name="end">When the group ended.</param>
    /// <param name="cut">Why it was cut short; null when it came to its end.</param>
    public (Trace Trace, ImmutableArray<SeriesPoint> Points) End(long end, string? cut)
    {
        Dispose();
        var length = _run.Log.MicrosecondsAt(end) - _origin;
        if (cut is not null) _open ??= Gap(length, cut);
        if (_open is { } gap) _gaps.Add(gap with { To = length });
        return (new Trace(_capture.Name, _capture.Channel.Shape, _values.DrainToImmutable(), _gaps.DrainToImmutable(), length), _record.DrainToImmutable());
    }

    public void Dispose() => _subscription.Dispose();

    private bool IsItsTurn(long at)
    {
        if (_thinned is not { } every) return true;
        var turn = at / Math.Max(1, (long)every.TotalMicroseconds);
        if (turn == _turn) return false;
        _turn = turn;
        return true;
    }

    private TraceGap Gap(long to, string cause) => new(_values.Count == 0 ? 0 : _values[^1].At, to, cause);

    private void Keep(long at, in Reading reading) => _record.Add(SeriesPoints.Of(_origin + at, reading));
}
