namespace EolSequencer.Simulators.Physics;

/// <summary>Start button and terminal 15.</summary>
internal sealed class Ignition(Van van)
{
    private static readonly TimeSpan RefusalShown = TimeSpan.FromSeconds(1);
    private TimeSpan _refusedUntil = TimeSpan.MinValue;

    /// <summary>Terminal 15.</summary>
    public bool IsOn { get; private set; }

    /// <summary>When it was last switched on.</summary>
    public TimeSpan OnSince { get; private set; } = TimeSpan.MinValue;

    public bool IsButtonPressed { get; private set; }

    public bool IsButtonDead { get; set; }

    /// <summary>Switching off has no effect.</summary>
    public bool IsStuckOn { get; set; }

    /// <summary>Starting is allowed without the brake pedal, which it must not be.</summary>
    public bool StartsWithoutBrake { get; set; }

    public bool IsRefusing(TimeSpan now) => now < _refusedUntil;

    /// <summary>How long it has been on.</summary>
    public TimeSpan OnFor(TimeSpan now) => IsOn ? now - OnSince : TimeSpan.Zero;

    /// <summary>
    /// Presses the start button: from off, the ignition comes on; when it is on, the drive starts with the brake held
    /// and is refused without; a running drive is switched off.
    /// </summary>
    public void Press()
    {
        if (IsButtonDead) return;
        IsButtonPressed = true;
        if (!IsOn) SwitchOn();
        else if (van.IsDriveOn) SwitchOff();
        else if (van.Brakes.IsSwitchOn || StartsWithoutBrake) van.StartDrive();
        else _refusedUntil = van.Now + RefusalShown;
        van.Changed();
    }

    public void Release()
    {
        IsButtonPressed = false;
        van.Changed();
    }

    /// <summary>Presses the button as often as it takes to have everything off.</summary>
    public void SwitchOff()
    {
        if (IsStuckOn || IsButtonDead) return;
        IsOn = false;
        van.StopDrive();
        van.Lamps.Refresh();
        van.Changed();
    }

    private void SwitchOn()
    {
        IsOn = true;
        OnSince = van.Now;
        van.Lamps.Refresh();
    }
}
