namespace EolSequencer.Simulators.Physics;

/// <summary>The low-voltage supply, as a meter at the battery sees it.</summary>
internal sealed class PowerNet
{
    private static readonly TimeSpan FirstTurn = TimeSpan.FromMilliseconds(90);
    private static readonly TimeSpan ChargingRises = TimeSpan.FromMilliseconds(150);
    private readonly Van _van;

    public PowerNet(Van van)
    {
        _van = van;
        var spread = van.Spread.Of("supply");
        RestVoltage = spread.About(12.66, 0.04);
        CrankVoltage = spread.About(10.5, 0.12);
        ChargingVoltage = spread.About(14.2, 0.06);
        Ripple = spread.About(0.12, 0.02);
        GroundMilliOhms = spread.About(1.6, 0.1);
    }

    /// <summary>V with next to no load.</summary>
    public double RestVoltage { get; set; }

    /// <summary>V at the starter's first turn.</summary>
    public double CrankVoltage { get; set; }

    /// <summary>V once the drive charges.</summary>
    public double ChargingVoltage { get; set; }

    /// <summary>V from peak to peak while charging.</summary>
    public double Ripple { get; set; }

    /// <summary>From the body to the battery's negative pole.</summary>
    public double GroundMilliOhms { get; set; }

    /// <summary>What the control units' own measurement of the supply is off by, in V.</summary>
    public double ModuleError { get; set; }

    /// <summary>What the body's own measurement of the lamp supply is off by, in A.</summary>
    public double LampFeedError { get; set; }

    /// <summary>Everything that draws on it, in A.</summary>
    public double Load(TimeSpan now) =>
        (_van.Ignition.IsOn ? 9 : 0.4) + _van.Lamps.SupplyCurrent(now) + _van.Horn.Current +
        _van.Climate.BlowerCurrent(now) + _van.Climate.HeaterCurrent;

    public double Voltage(TimeSpan now)
    {
        var engine = _van.Engine;
        if (engine.Cranks(now))
        {
            // The deepest dip is the first turn; the turning engine then takes less.
            var turning = now - engine.CrankStart;
            return turning < FirstTurn ? CrankVoltage : CrankVoltage + 0.7 + (0.2 * Jitter.At(now, FirstTurn / 3, 11));
        }

        var idle = RestVoltage - (0.012 * Load(now));
        if (_van.DriveRunsFor(now) is not { } running) return idle;
        var step = 1 + (running / ChargingRises);
        return ChargingVoltage - (0.002 * Load(now)) + ((idle - ChargingVoltage) / (step * step * step));
    }

    public double RippleAt(TimeSpan now) => _van.DriveRuns(now) ? Ripple : 0.01;

    /// <summary>Voltage drop from body to battery in mV.</summary>
    public double GroundDrop(TimeSpan now) => GroundMilliOhms * Load(now);
}
