namespace EolSequencer.Simulators.Physics;

/// <summary>The headlamp leveller: 0 % straight, 100 % fully lowered.</summary>
internal sealed class Leveller(Van van)
{
    private Ramp _position = Ramp.Resting(0);

    public bool IsStuck { get; set; }

    public double PercentPerSecond { get; set; } = 45;

    public double Position(TimeSpan now) => _position.At(now);

    public bool IsMoving(TimeSpan now) => _position.IsMoving(now);

    public void Turn(double percent)
    {
        if (!IsStuck) _position = _position.Toward(percent, PercentPerSecond, van.Now);
        van.Changed();
    }
}
