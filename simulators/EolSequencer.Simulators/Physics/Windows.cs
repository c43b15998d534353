namespace EolSequencer.Simulators.Physics;

/// <summary>The two windows of the front doors: 0 % open, 100 % closed.</summary>
internal sealed class Windows
{
    private const double InrushAmps = 7;
    private const double UpwardAmps = 1.4;
    private static readonly TimeSpan InrushTime = TimeSpan.FromMilliseconds(60);
    private static readonly TimeSpan JitterStep = TimeSpan.FromMilliseconds(20);
    private readonly Van _van;
    private readonly Ramp[] _position = [Ramp.Resting(100), Ramp.Resting(100)];
    private readonly bool[] _hasRun = new bool[2];
    private readonly TimeSpan[] _begun = new TimeSpan[2];
    private readonly bool[] _isUp = new bool[2];
    private readonly TimeSpan[] _driven = [TimeSpan.MinValue, TimeSpan.MinValue];

    public Windows(Van van)
    {
        _van = van;
        var spread = van.Spread.Of("windows");
        Travel = [spread.About(4.3, 0.15), spread.About(4.3, 0.15)];
        var motors = van.Spread.Of("window motors");
        Amps = [motors.About(5.0, 0.25), motors.About(5.0, 0.25)];
    }

    /// <summary>Seconds for the whole way, left and right.</summary>
    public double[] Travel { get; }

    /// <summary>What the motors draw on the way down, left and right, in A.</summary>
    public double[] Amps { get; }

    /// <summary>Motors that turn but move nothing.</summary>
    public bool[] AreStuck { get; } = new bool[2];

    /// <summary>Motors that are reported on for ever once they ran.</summary>
    public bool[] MotorsStuckOn { get; } = new bool[2];

    /// <summary>Whether the drives know their end stops.</summary>
    public bool[] AreLearned { get; } = [true, true];

    public double Position(int side, TimeSpan now) => _position[side].At(now);

    public bool IsMotorOn(int side, TimeSpan now) => now < _driven[side] || (MotorsStuckOn[side] && _hasRun[side]);

    /// <summary>What a motor draws, in A: much for a moment when it begins, more on the way up than down.</summary>
    public double Current(int side, TimeSpan now)
    {
        if (now >= _driven[side]) return 0;
        var inrush = new Approach(InrushAmps, 0, _begun[side], InrushTime).At(now);
        return Amps[side] + (_isUp[side] ? UpwardAmps : 0) + inrush + (0.15 * Jitter.At(now, JitterStep, (uint)(10 + side)));
    }

    public bool IsMoving(TimeSpan now) => now < _driven[0] || now < _driven[1];

    /// <summary>Holds the switch of a window.</summary>
    public void Drive(int side, bool up)
    {
        if (!_van.Ignition.IsOn) return;
        var now = _van.Now;
        var way = _position[side].Toward(up ? 100 : 0, 100 / Travel[side], now);
        (_begun[side], _isUp[side], _driven[side]) = (now, up, way.End);
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
