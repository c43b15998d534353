namespace EolSequencer.Simulators.Physics;

/// <summary>The wiper motor with its park contact, and the washer's jets.</summary>
internal sealed class Wipers
{
    private const double ParkedShare = 0.18; // of a cycle, around the lower edge
    private readonly Van _van;
    private TimeSpan _start = TimeSpan.MinValue;
    private TimeSpan _end = TimeSpan.MinValue;
    private int _stage = Switches.Middle;
    private int _lastStage;

    public Wipers(Van van)
    {
        _van = van;
        var spread = van.Spread.Of("wipers");
        PerMinute = [spread.About(38, 1.2), spread.About(60, 1.5)];
    }

    /// <summary>Cycles per minute, slow and fast.</summary>
    public double[] PerMinute { get; }

    /// <summary>The motor does not turn.</summary>
    public bool IsStuck { get; set; }

    public bool IsParkContactOpen { get; set; }

    /// <summary>The blades stop above the lower edge.</summary>
    public bool ParksHigh { get; set; }

    /// <summary>Jets that give no water, left and right.</summary>
    public bool[] BlockedJets { get; } = new bool[2];

    /// <summary>Whether the washer pump has run.</summary>
    public bool HasSprayed { get; private set; }

    public bool IsMoving(TimeSpan now) => _stage >= 0 || now < _end;

    /// <summary>Looks at the switches again; switched off, the blades finish their cycle.</summary>
    public void Refresh()
    {
        HasSprayed |= _van.Switches.IsWasher;
        var stage = IsStuck ? Switches.Middle : _van.Switches.Wiper;
        if (stage == _stage) return;
        var now = _van.Now;
        if (stage >= 0) (_start, _end) = (now, TimeSpan.MaxValue);
        else _end = _start + (Cycle(_stage) * (((now - _start).Ticks / Cycle(_stage).Ticks) + 1));
        _stage = stage;
        _lastStage = stage >= 0 ? stage : _lastStage;
    }

    /// <summary>The park contact.</summary>
    public bool IsParked(TimeSpan now)
    {
        if (IsParkContactOpen) return false;
        if (!IsMoving(now)) return true;
        var cycle = Cycle(_lastStage);
        var share = (double)((now - _start).Ticks % cycle.Ticks) / cycle.Ticks;
        return share is < ParkedShare / 2 or >= 1 - (ParkedShare / 2);
    }

    private TimeSpan Cycle(int stage) => TimeSpan.FromMinutes(1 / PerMinute[stage]);
}
