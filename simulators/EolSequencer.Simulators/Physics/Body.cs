namespace EolSequencer.Simulators.Physics;

/// <summary>What the units know by teaching or by a measurement of their own.</summary>
internal sealed class Body
{
    private readonly Van _van;

    public Body(Van van)
    {
        _van = van;
        var spread = van.Spread.Of("body");
        AntennaMilliAmps = spread.About(68, 4);
        ModemSeconds = spread.About(2.5, 0.5);
        CouplingPercent = Math.Abs(spread.About(1, 0.7));
        TyreCircumference = van.Equipment.HasAlloyRims ? 2420 : 2448;
    }

    public int KeyCount { get; set; } = 2;

    public bool IsImmobiliserPaired { get; set; } = true;

    public bool IsInTransportMode { get; set; } = true;

    public double AntennaMilliAmps { get; set; }

    /// <summary>From ignition on to the modem's registration, in s.</summary>
    public double ModemSeconds { get; set; }

    /// <summary>Position of the all-wheel coupling at rest, in %.</summary>
    public double CouplingPercent { get; set; }

    /// <summary>Coded circumference in mm.</summary>
    public double TyreCircumference { get; set; }

    public bool IsModemRegistered(TimeSpan now) => _van.Ignition.OnFor(now).TotalSeconds >= ModemSeconds && _van.Ignition.IsOn;
}
