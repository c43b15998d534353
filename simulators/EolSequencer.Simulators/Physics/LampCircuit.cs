namespace EolSequencer.Simulators.Physics;

/// <summary>One lamp with its wire.</summary>
internal sealed class LampCircuit(string name, double amps)
{
    private static readonly TimeSpan Inrush = TimeSpan.FromMilliseconds(12);
    private TimeSpan _litSince;

    public string Name => name;

    /// <summary>Current of the warm filament at nominal supply, in A.</summary>
    public double Amps { get; set; } = amps;

    public bool IsOpen { get; set; }

    /// <summary>A diagnostic request that holds it on or off; null: the switches decide.</summary>
    public bool? Taken { get; set; }

    public bool IsSwitchedOn { get; private set; }

    /// <summary>Water or dirt behind the lens, seen only by looking.</summary>
    public bool LooksWrong { get; set; }

    public bool IsLit => IsSwitchedOn && !IsOpen;

    public void Switch(bool isOn, TimeSpan now)
    {
        if (isOn && !IsSwitchedOn) _litSince = now;
        IsSwitchedOn = isOn;
    }

    /// <summary>Current at a moment: a cold filament draws many times what the warm one does.</summary>
    public double CurrentAt(TimeSpan now) => IsLit ? Amps * InrushAt(now - _litSince) : 0;

    /// <summary>Current when a flasher lit it that long ago.</summary>
    public double CurrentAfter(TimeSpan lit) => IsOpen ? 0 : Amps * InrushAt(lit);

    private static double InrushAt(TimeSpan lit)
    {
        var step = 1 + (lit / Inrush);
        return 1 + (7 / (step * step * step));
    }
}
