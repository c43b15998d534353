using EolSequencer.Simulators.Time;
using EolSequencer.Wire.Can;

namespace EolSequencer.Simulators.Bus;

/// <summary>
/// A CAN bus: one frame at a time, the lowest identifier first when several wait, each frame as long as its bits.
/// Cyclic frames are lazy: they take bus time only while somebody listens for them.
/// </summary>
internal sealed class SimulatedCanBus(ISchedule schedule, BusSpeed speed) : IDue
{
    private const int Arbitration = 0;
    private const int FrameEnd = 1;

    private readonly Dictionary<CanId, Listening[]> _listenings = [];
    private readonly Dictionary<CanId, CyclicFrame> _cyclic = [];
    private readonly List<ListeningToAll> _toAll = [];
    private readonly List<CyclicFrame> _wanted = [];
    private readonly List<BusPort> _waiting = [];
    private readonly Stack<PendingFrame> _spare = [];
    private readonly TimeSpan _intermission = speed.Intermission;
    private PendingFrame? _onWire;
    private TimeSpan _freeAt;
    private bool _isArbitrationDue;
    private int _frameNumber;

    /// <summary>Whether signals pass; false when the line is broken, so that nobody hears or acknowledges anything.</summary>
    public bool IsIntact { get; private set; } = true;

    /// <summary>Frames carried so far.</summary>
    public long FrameCount { get; private set; }

    /// <summary>Sees every frame; null: nobody.</summary>
    public IBusObserver? Observer { get; set; }

    public ISchedule Schedule => schedule;

    public long Stamp => schedule.Stamp(schedule.Now);

    public BusPort Attach() => new(this);

    /// <summary>How long a frame takes to its last bit before the intermission.</summary>
    public TimeSpan TimeToEnd(in CanFrame frame) => speed.FrameTime(frame) - _intermission;

    /// <summary>Breaks the line or mends it. A frame on the wire is lost and tried again when the line is whole.</summary>
    public void SetIntact(bool isIntact)
    {
        if (IsIntact == isIntact) return;
        IsIntact = isIntact;
        if (!isIntact) _onWire = null;
        _frameNumber++;
        foreach (var frame in _wanted.ToArray()) frame.LineChanged();
        ScheduleArbitration();
    }

    /// <summary>Something in the vehicle has changed: listened-for cyclic frames look again at their next instant.</summary>
    public void Wake()
    {
        foreach (var frame in _wanted) frame.LookAgain();
    }

    public void Add(CyclicFrame frame) => _cyclic.Add(frame.Id, frame);

    public IDisposable Remember(Listening listening)
    {
        _listenings[listening.Id] = _listenings.TryGetValue(listening.Id, out var others) ? [.. others, listening] : [listening];
        if (_cyclic.TryGetValue(listening.Id, out var frame))
        {
            if (!frame.IsWanted) _wanted.Add(frame);
            frame.Join(listening);
        }

        return listening;
    }

    public void Forget(Listening listening)
    {
        var left = Array.FindAll(_listenings[listening.Id], other => other != listening);
        if (left.Length > 0) _listenings[listening.Id] = left;
        else _listenings.Remove(listening.Id);

        if (_cyclic.TryGetValue(listening.Id, out var frame))
        {
            frame.Leave(listening);
            if (!frame.IsWanted) _wanted.Remove(frame);
        }
    }

    /// <summary>Hands every frame of others to a listener: cyclic ones are then sent at each of their instants.</summary>
    public IDisposable ListenToAll(BusPort port, ICanListener listener)
    {
        var all = new ListeningToAll(this, port, listener, [.. _cyclic.Keys.Select(id => Remember(new Listening(this, port, id, listener, Repeats.All)))]);
        _toAll.Add(all);
        return all;
    }

    public void Forget(ListeningToAll all) => _toAll.Remove(all);

    public ReadOnlySpan<Listening> ListeningsTo(CanId id) => _listenings.TryGetValue(id, out var all) ? all : [];

    public PendingFrame Rent() => _spare.TryPop(out var spare) ? spare : new PendingFrame();

    public void Return(PendingFrame frame) => _spare.Push(frame);

    public bool IsOnWire(PendingFrame frame) => _onWire == frame;

    /// <summary>Lets the frame on the wire finish without its sender, who has given up.</summary>
    public void Detach(PendingFrame frame)
    {
        var shell = Rent();
        shell.BeginFor(frame.Port, frame.Frame, owner: null, what: 0);
        _onWire = shell;
    }

    /// <summary>Breaks off whatever a port has on the wire.</summary>
    public void Abort(BusPort port)
    {
        if (_onWire?.Port != port) return;
        _onWire = null;
        _frameNumber++;
        ScheduleArbitration();
    }

    public void Offer(BusPort port)
    {
        if (!_waiting.Contains(port)) _waiting.Add(port);
        ScheduleArbitration();
    }

    /// <inheritdoc/>
    public void Due(int what)
    {
        if (what == Arbitration) Arbitrate();
        else if (what == FrameEnd + _frameNumber) EndFrame();
    }

    // Due at this moment, not done at once: all who offer a frame at the same moment take part.
    private void ScheduleArbitration()
    {
        if (_isArbitrationDue || _onWire is not null || !IsIntact || _waiting.Count == 0) return;
        _isArbitrationDue = true;
        schedule.At(_freeAt, this, Arbitration);
    }

    private void Arbitrate()
    {
        _isArbitrationDue = false;
        if (_onWire is not null || !IsIntact) return;

        PendingFrame? winner = null;
        for (var i = _waiting.Count - 1; i >= 0; i--)
        {
            if (_waiting[i].Next is not { } next) _waiting.RemoveAt(i);
            else if (winner is null || next.Precedence <= winner.Precedence) winner = next;
        }

        if (winner is null) return;
        _onWire = winner;
        var length = speed.FrameTime(winner.Frame);
        _freeAt = schedule.Now + length;
        schedule.At(_freeAt - _intermission, this, FrameEnd + ++_frameNumber);
    }

    private void EndFrame()
    {
        var carried = _onWire!;
        var frame = carried.Frame;
        var port = carried.Port;
        var stamp = Stamp;
        _onWire = null;
        FrameCount++;
        port.Dequeue(carried);
        carried.End(Transmission.Confirmed(stamp));
        Observer?.Carried(frame, stamp);
        foreach (var listening in ListeningsTo(frame.Id))
        {
            if (listening.Port != port && listening.Port.State == LinkState.Up) listening.Hand(frame, stamp);
        }

        if (_toAll.Count > 0 && !_cyclic.ContainsKey(frame.Id))
        {
            foreach (var all in _toAll.ToArray()) all.Hand(frame, port, stamp);
        }

        ScheduleArbitration();
    }
}
