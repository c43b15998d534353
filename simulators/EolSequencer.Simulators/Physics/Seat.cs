namespace EolSequencer.Simulators.Physics;

/// <summary>The driver's seat on its rails: 0 mm rear end, 200 mm front end.</summary>
internal sealed class Seat
{
    private readonly Van _van;
    private Ramp _position;
    private TimeSpan _drivenUntil = TimeSpan.MinValue;

    public Seat(Van van)
    {
        _van = van;
        var spread = van.Spread.Of("seat");
        _position = Ramp.Resting(spread.About(88, 4));
        MmPerSecond = spread.About(24, 1);
    }

    public double MmPerSecond { get; set; }

    /// <summary>The motor turns, the seat stays.</summary>
    public bool IsStuck { get; set; }

    public double Position(TimeSpan now) => _position.At(now);

    public bool IsMotorOn(TimeSpan now) => now < _drivenUntil;

    public void Drive(bool forward)
    {
        var way = _position.Toward(forward ? 200 : 0, MmPerSecond, _van.Now);
        _drivenUntil = way.End;
        if (!IsStuck) _position = way;
        _van.Changed();
    }

    public void Release()
    {
        _position = _position.Stopped(_van.Now);
        _drivenUntil = TimeSpan.MinValue;
        _van.Changed();
    }
}
