using EolSequencer.Simulators.Bus;
using EolSequencer.Simulators.ControlUnits.Records;
using EolSequencer.Simulators.Physics;
using EolSequencer.Simulators.Randomness;
using EolSequencer.Simulators.Time;
using EolSequencer.Wire.Can;
using EolSequencer.Wire.IsoTp;
using EolSequencer.Wire.Uds;

namespace EolSequencer.Simulators.ControlUnits;

/// <summary>A control unit of one vehicle: on the bus, awake or not, with its memory and its session.</summary>
internal sealed class ControlUnit : IMessageTaker, IDue
{
    private static readonly TransportOptions Options = new() { Padding = 0xAA };

    private readonly ISchedule _schedule;
    private readonly BusPort _port;
    private readonly RandomStream _times;
    private readonly List<CyclicFrame> _frames = [];
    private int _starts;

    public ControlUnit(UnitType type, Van van, SimulatedCanBus bus, UnitMemory memory, ulong seed)
    {
        (Type, Van, Memory) = (type, van, memory);
        _schedule = bus.Schedule;
        _port = bus.Attach();
        _times = new RandomStream(seed, type.Name);
        Session = new SessionState(new RandomStream(seed, type.Name + ".seeds"));
        Server = new DiagnosticServer(this, _schedule);
        Transport = new UnitTransport(_port, TransportAddress.Normal(CanId.Base(type.Response), CanId.Base(type.Request)), Options, this);
        BootTime = type.BootTime;
    }

    public UnitType Type { get; }

    public string Name => Type.Name;

    public Van Van { get; }

    public UnitMemory Memory { get; }

    public SessionState Session { get; }

    public UnitTransport Transport { get; }

    public DiagnosticServer Server { get; }

    public UnitQuirks Quirks { get; } = new();

    /// <summary>The other units; set once all are there.</summary>
    public UnitNetwork Network { get; set; } = new([]);

    /// <summary>The unit's plug, for the cyclic frames it sends.</summary>
    public BusPort Port => _port;

    public TimeSpan Now => _schedule.Now;

    /// <summary>From a reset to the first answer.</summary>
    public TimeSpan BootTime { get; set; }

    /// <summary>Whether it has a supply at all.</summary>
    public bool IsDead { get; private set; }

    /// <summary>Whether it hears and answers.</summary>
    public bool IsAwake { get; private set; } = true;

    /// <summary>Whether its ordinary frames are switched off (service 28).</summary>
    public bool IsMuted { get; private set; }

    /// <summary>Called with the outputs that fall back.</summary>
    public void ReturnOutputs()
    {
        foreach (var item in Type.Records)
        {
            item.Take?.Invoke(Van, null);
        }
    }

    /// <summary>How long this answer takes before any work: a few milliseconds, never quite the same.</summary>
    public TimeSpan NextAnswerTime() => Type.AnswerTime + TimeSpan.FromMicroseconds(_times.Pick(900));

    public void Add(CyclicFrame frame) => _frames.Add(frame);

    /// <inheritdoc/>
    public void Take(ReadOnlyMemory<byte> message, bool isForGroup) => Server.Take(message, isForGroup);

    /// <inheritdoc/>
    public void SendingEnded() => Server.SendingEnded();

    public void EnterSession(DiagnosticSession session)
    {
        if (session == DiagnosticSession.Default) LeaveSession();
        else Session.Enter(session);
        Server.SessionChanged();
    }

    /// <summary>Back to the default session: outputs fall back, frames and code storing go on.</summary>
    public void LeaveSession()
    {
        Session.Enter(DiagnosticSession.Default);
        Memory.Troubles.IsStoring = true;
        Mute(false);
        ReturnOutputs();
    }

    public void Mute(bool isMuted)
    {
        IsMuted = isMuted;
        SwitchFrames();
    }

    /// <summary>Off and on again, as after a reset.</summary>
    public void Restart()
    {
        if (IsDead) return;
        Sleep();
        _schedule.At(_schedule.Now + BootTime, this, ++_starts);
    }

    /// <summary>Loses its supply for good.</summary>
    public void Die()
    {
        IsDead = true;
        _starts++;
        Sleep();
    }

    /// <summary>Forgets what is on its way to or from the bus.</summary>
    public void Forget()
    {
        Server.Forget();
        Transport.Forget();
    }

    /// <inheritdoc/>
    public void Due(int what)
    {
        if (what != _starts || IsDead) return;
        IsAwake = true;
        _port.Change(LinkState.Up);
        SwitchFrames();
    }

    private void Sleep()
    {
        IsAwake = false;
        Forget();
        LeaveSession();
        Type.Stopped?.Invoke(Van);
        _port.Change(LinkState.Down);
        SwitchFrames();
    }

    private void SwitchFrames()
    {
        foreach (var frame in _frames) frame.Switch(IsAwake && !IsMuted);
    }
}
