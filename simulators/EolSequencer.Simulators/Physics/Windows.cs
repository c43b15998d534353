namespace EolSequencer.Simulators.Physics;

/// <summary>The two windows of the front doors: 0 % open, 100 % closed.</summary>
internal sealed class Windows
{
    private readonly Van _van;
    private readonly Ramp[] _position = [Ramp.Resting(100), Ramp.Resting(100)];
    private readonly bool[] _hasRun = new bool[2];
    private readonly TimeSpan[] _driven = [TimeSpan.MinValue, TimeSpan.MinValue];

    public Windows(Van van)
    {
        _van = van;
        var spread = van.Spread.Of("windows");
        Travel = [spread.About(4.3, 0.15), spread.About(4.3, 0.15)];
    }

    /// <summary>Seconds for the whole way, left and right.</summary>
    public double[] Travel { get; }

    /// <summary>Motors that turn but move nothing.</summary>
    public bool[] AreStuck { get; } = new bool[2];

    /// <summary>Motors that are reported on for ever once they ran.</summary>
    public bool[] MotorsStuckOn { get; } = new bool[2];

    /// <summary>Whether the drives know their end stops.</summary>
    public bool[] AreLearned { get; } = [true, true];

    public double Position(int side, TimeSpan now) => _position[side].At(now);

    public bool IsMotorOn(int side, TimeSpan now) => now < _driven[side] || (MotorsStuckOn[side] && _hasRun[side]);

    public bool IsMoving(TimeSpan now) => now < _driven[0] || now < _driven[1];

    /// <summary>Holds the switch of a window.</summary>
    public void Drive(int side, bool up)
    {
        if (!_van.Ignition.IsOn) return;
        var now = _van.Now;
        var way = _position[side].Toward(up ? 100 : 0, 100 / Travel[side], now);
        _driven[side] = way.End;
        _hasRun[side] = true;
        if (!AreStuck[side]) _position[side] = way;
        _van.Changed();
    }

    /// <summary>Lets the switch go.</summary>
    public void Release(int side)
    {
        var now = _van.Now;
        _position[side] = _position[side].Stopped(now);
        _driven[side] = TimeSpan.MinValue;
        _van.Changed();
    }
}
