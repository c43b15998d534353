namespace EolSequencer.Simulators.Physics;

/// <summary>Brake pedal, parking brake and the hydraulic unit.</summary>
internal sealed class Brakes
{
    private static readonly TimeSpan Noise = TimeSpan.FromMilliseconds(60);
    private readonly Van _van;
    private TimeSpan _pressedSince;
    private TimeSpan _clampedSince = TimeSpan.MinValue;
    private TimeSpan _hydraulicStart = TimeSpan.MaxValue;
    private Ramp _travel = Ramp.Resting(0);

    public Brakes(Van van)
    {
        _van = van;
        var spread = van.Spread.Of("brakes");
        Travel = spread.About(54, 2);
        ClampAmps = [spread.About(13, 0.6), spread.About(13, 0.6)];
        ClampSeconds = spread.About(0.9, 0.05);
    }

    /// <summary>Pedal travel under the tester's foot in mm.</summary>
    public double Travel { get; set; }

    /// <summary>How fast the held pedal gives way, in mm/s.</summary>
    public double SinkRate { get; set; }

    public bool IsSwitchDead { get; set; }

    /// <summary>Peak current of the clamping motors, left and right, in A.</summary>
    public double[] ClampAmps { get; }

    public double ClampSeconds { get; set; }

    /// <summary>The parking brake does not let go.</summary>
    public bool IsClampStuck { get; set; }

    /// <summary>The parking brake does not clamp again.</summary>
    public bool DoesNotClamp { get; set; }

    public bool HydraulicFails { get; set; }

    public bool HydraulicHangs { get; set; }

    /// <summary>How long pump and valves run, in s.</summary>
    public double HydraulicSeconds { get; set; } = 3;

    public bool IsPressed { get; private set; }

    public bool IsSwitchOn => IsPressed && !IsSwitchDead;

    /// <summary>Whether the lever or switch asks for the parking brake.</summary>
    public bool IsClampWanted { get; private set; } = true;

    public void Press(bool isPressed)
    {
        if (IsPressed == isPressed) return;
        IsPressed = isPressed;
        _pressedSince = _van.Now;
        _travel = _travel.Toward(isPressed ? Travel : 0, 500, _van.Now);
        _van.Lamps.Refresh();
        _van.Changed();
    }

    /// <summary>Pedal travel in mm, with the small unrest of a foot.</summary>
    public double TravelAt(TimeSpan now)
    {
        var travel = _travel.At(now);
        if (!IsPressed) return travel;
        return travel + (0.4 * Jitter.At(now, Noise, 7)) + (SinkRate * (now - _pressedSince).TotalSeconds);
    }

    public bool IsMoving(TimeSpan now) => IsPressed || _travel.IsMoving(now) || now < _clampedSince;

    public void SetParkingBrake(bool isClamped)
    {
        if (IsClampWanted == isClamped || (!isClamped && IsClampStuck) || (isClamped && DoesNotClamp)) return;
        IsClampWanted = isClamped;
        _clampedSince = isClamped ? _van.Now + TimeSpan.FromSeconds(ClampSeconds) : TimeSpan.MinValue;
        _van.Changed();
    }

    public bool IsClamped(TimeSpan now) => IsClampWanted && now >= _clampedSince;

    public void StartHydraulicTest() => _hydraulicStart = _van.Now;

    /// <summary>Whether the routine has been started since the unit woke.</summary>
    public bool HydraulicWasStarted => _hydraulicStart != TimeSpan.MaxValue;

    public bool HydraulicIsDone(TimeSpan now) =>
        HydraulicWasStarted && !HydraulicHangs && now >= _hydraulicStart + TimeSpan.FromSeconds(HydraulicSeconds);

    public void ForgetHydraulicTest() => _hydraulicStart = TimeSpan.MaxValue;
}
