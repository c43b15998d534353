namespace EolSequencer.Simulators.Physics;

/// <summary>The beat of the turn signals.</summary>
internal sealed class Flasher
{
    private const double LitShare = 0.5;
    private readonly Van _van;
    private readonly TimeSpan[] _since = [TimeSpan.MaxValue, TimeSpan.MaxValue];
    private readonly bool[] _isOn = new bool[2];

    public Flasher(Van van)
    {
        _van = van;
        var spread = van.Spread.Of("flasher");
        PerMinute = spread.About(90, 3);
        FirstLight = [spread.AboutSeconds(0.12, 0.02), spread.AboutSeconds(0.12, 0.02)];
    }

    /// <summary>Flashes per minute.</summary>
    public double PerMinute { get; set; }

    /// <summary>From the stalk to the first light, left and right.</summary>
    public TimeSpan[] FirstLight { get; }

    public bool IsDead { get; set; }

    /// <summary>How far the right side beats behind the left one, as a share of a beat.</summary>
    public double RightLag { get; set; }

    public bool IsRunning => _isOn[0] || _isOn[1];

    /// <summary>Looks at stalk and hazard switch again.</summary>
    public void Refresh()
    {
        for (var side = 0; side < 2; side++)
        {
            var isWanted = _van.Switches.IsHazard || (_van.Ignition.IsOn && _van.Switches.Turn == side);
            if (isWanted && !_isOn[side]) _since[side] = _van.Now + FirstLight[_van.Switches.IsHazard ? 0 : side];
            _isOn[side] = isWanted;
        }
    }

    /// <summary>Whether the output of a side is on.</summary>
    public bool IsLit(int side, TimeSpan now) => LitFor(side, now) is not null;

    /// <summary>How long the present flash of a side has been lit; null: dark.</summary>
    public TimeSpan? LitFor(int side, TimeSpan now)
    {
        if (IsDead || !_isOn[side] || now < _since[side]) return null;
        var beat = TimeSpan.FromMinutes(1 / PerMinute);
        var into = (now - _since[side] + (side == 1 ? beat * (1 - RightLag) : beat)).Ticks % beat.Ticks;
        return into < beat.Ticks * LitShare ? new TimeSpan(into) : null;
    }
}
