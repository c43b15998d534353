using EolSequencer.Simulators.Time;
using EolSequencer.Wire.Can;

namespace EolSequencer.Simulators.Bus;

/// <summary>Writes a frame's bytes as they are at a moment.</summary>
/// <returns>True when they may change by themselves, so that every cycle has to look; false when somebody will say so.</returns>
internal delegate bool PayloadWriter(TimeSpan now, Span<byte> payload);

/// <summary>
/// A frame that a control unit sends in a fixed cycle. While nobody listens it costs nothing; while all listeners can
/// do without repeats, only changed bytes go out, at the instants at which the cycle would have sent them.
/// </summary>
internal sealed class CyclicFrame : IDue, IFrameOwner
{
    private readonly SimulatedCanBus _bus;
    private readonly BusPort _port;
    private readonly TimeSpan _cycle;
    private readonly TimeSpan _phase;
    private readonly PayloadWriter _write;
    private readonly byte[] _scratch;
    private byte[] _last = [];
    private TimeSpan _lastEnd;
    private TimeSpan _scheduled = TimeSpan.MinValue;
    private TimeSpan _looked = TimeSpan.MinValue;
    private int _version;
    private int _listeners;
    private int _listenersToAll;
    private bool _mustSend;
    private bool _isOn = true;

    /// <param name="bus">Where it goes out.</param>
    /// <param name="port">The plug of the unit that sends it.</param>
    /// <param name="id">Its identifier.</param>
    /// <param name="length">Data bytes, 0 to 8.</param>
    /// <param name="cycle">Time between two instants, above zero.</param>
    /// <param name="phase">The first instant after the schedule's start.</param>
    /// <param name="write">Gives the bytes.</param>
    public CyclicFrame(SimulatedCanBus bus, BusPort port, CanId id, int length, TimeSpan cycle, TimeSpan phase, PayloadWriter write)
    {
        (_bus, _port, Id, _cycle, _phase, _write) = (bus, port, id, cycle, phase, write);
        _scratch = new byte[length];
        bus.Add(this);
    }

    public CanId Id { get; }

    public bool IsWanted => _listeners > 0;

    /// <summary>Whether the unit sends it at present.</summary>
    public bool IsSending => _isOn && _bus.IsIntact;

    public void Join(Listening listening)
    {
        _listeners++;
        if (listening.Repeats == Repeats.All) _listenersToAll++;
        _mustSend = true;
        LookAgain();
    }

    public void Leave(Listening listening)
    {
        _listeners--;
        if (listening.Repeats == Repeats.All) _listenersToAll--;
    }

    /// <summary>The unit begins or stops to send it.</summary>
    public void Switch(bool isOn)
    {
        if (_isOn == isOn) return;
        _isOn = isOn;
        if (_bus.IsIntact) SendingChanged();
    }

    /// <summary>The line was broken or mended.</summary>
    public void LineChanged()
    {
        if (_isOn) SendingChanged();
    }

    /// <summary>Looks at the bytes at the next instant of the cycle.</summary>
    public void LookAgain()
    {
        if (!IsSending || !IsWanted) return;
        var now = _bus.Schedule.Now;
        var instant = NextInstant(now > _looked ? now : _looked + TimeSpan.FromTicks(1));
        if (_scheduled == instant) return;
        _scheduled = instant;
        _bus.Schedule.At(instant, this, ++_version);
    }

    /// <inheritdoc/>
    public void Due(int what)
    {
        if (what != _version) return;
        _scheduled = TimeSpan.MinValue;
        if (!IsSending || !IsWanted) return;

        var now = _bus.Schedule.Now;
        _looked = now;
        var payload = _scratch.AsSpan();
        payload.Clear();
        var isMoving = _write(now, payload);
        var mustRepeat = _listenersToAll > 0;
        if (_mustSend || mustRepeat || !payload.SequenceEqual(_last))
        {
            _mustSend = false;
            if (!payload.SequenceEqual(_last)) _last = payload.ToArray();
            _port.Send(CanFrame.Classical(Id, _last), this);
        }

        if (isMoving || mustRepeat)
        {
            _scheduled = now + _cycle;
            _bus.Schedule.At(_scheduled, this, ++_version);
        }
    }

    /// <inheritdoc/>
    public void Sent(int what) => _lastEnd = _bus.Schedule.Now;

    private void SendingChanged()
    {
        if (IsSending)
        {
            _mustSend = true;
            LookAgain();
            return;
        }

        _port.Withdraw(this);
        _scheduled = TimeSpan.MinValue;
        _version++;
        if (_last.Length == 0) return;

        var lastStamp = _bus.Schedule.Stamp(LastEnd(_bus.Schedule.Now));
        foreach (var listening in _bus.ListeningsTo(Id))
        {
            if (listening.Repeats == Repeats.MayBeSkipped) listening.Silence(lastStamp);
        }
    }

    // Left-out repeats went out at their instants as far as anybody outside can tell.
    private TimeSpan LastEnd(TimeSpan now)
    {
        var length = _bus.TimeToEnd(CanFrame.Classical(Id, _last));
        var instant = NextInstant(now - length - _cycle);
        if (instant + length > now) instant -= _cycle;
        return instant + length > _lastEnd ? instant + length : _lastEnd;
    }

    private TimeSpan NextInstant(TimeSpan from)
    {
        if (from <= _phase) return _phase;
        var cycles = (from - _phase + _cycle - TimeSpan.FromTicks(1)).Ticks / _cycle.Ticks;
        return _phase + (cycles * _cycle);
    }
}
