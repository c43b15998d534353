namespace EolSequencer.Simulators.Physics;

/// <summary>The horn: what it draws and how loud it is.</summary>
internal sealed class Horn
{
    private const double QuietShop = 62; // dB(A)
    private readonly Van _van;
    private bool? _taken;

    public Horn(Van van)
    {
        _van = van;
        var spread = van.Spread.Of("horn");
        Amps = spread.About(5.2, 0.3);
        Level = spread.About(104, 1.2);
    }

    /// <summary>Current while it sounds, in A.</summary>
    public double Amps { get; set; }

    /// <summary>dB(A) at the near point while it sounds.</summary>
    public double Level { get; set; }

    public bool IsOpen { get; set; }

    public bool Sounds => (_taken ?? _van.Switches.IsHorn) && !IsOpen;

    public double Current => Sounds ? Amps : 0;

    public double SoundLevel => Sounds ? Level : QuietShop;

    /// <summary>A diagnostic request takes it over or, with null, gives it back.</summary>
    public void Take(bool? on)
    {
        _taken = on;
        _van.Changed();
    }
}
