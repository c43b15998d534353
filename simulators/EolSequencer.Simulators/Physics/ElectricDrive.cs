namespace EolSequencer.Simulators.Physics;

/// <summary>The high-voltage side: pack, precharge, link, and what is measured on it.</summary>
internal sealed class ElectricDrive
{
    private static readonly TimeSpan Wakes = TimeSpan.FromMilliseconds(250);
    private static readonly TimeSpan ContactorsClose = TimeSpan.FromMilliseconds(180);
    private TimeSpan _precharge = TimeSpan.MaxValue;

    public ElectricDrive(Van van)
    {
        var spread = van.Spread.Of("traction");
        var shop = van.Surroundings.Temperature;
        PackVoltage = spread.About(378, 4);
        PrechargeSeconds = spread.About(0.42, 0.02);
        Isolation = spread.About(2400, 150);
        MotorTemperature = shop + spread.About(3, 1);
        InverterTemperature = shop + spread.About(4, 1);
        PackTemperature = shop + spread.About(1, 0.8);
        PumpSpeed = spread.About(2300, 60);
        CellSpread = spread.About(9, 2);
    }

    public double PackVoltage { get; set; }

    /// <summary>From the beginning of precharge to 95 % of the pack's voltage, in s.</summary>
    public double PrechargeSeconds { get; set; }

    /// <summary>Volts that the link stays below the pack once the contactors are closed.</summary>
    public double LinkDrop { get; set; }

    /// <summary>ohm/V.</summary>
    public double Isolation { get; set; }

    public bool IsInterlockOpen { get; set; }

    /// <summary>Ready never comes, although precharge ends.</summary>
    public bool NeverReady { get; set; }

    /// <summary>°C.</summary>
    public double MotorTemperature { get; set; }

    /// <summary>°C.</summary>
    public double InverterTemperature { get; set; }

    /// <summary>°C.</summary>
    public double PackTemperature { get; set; }

    /// <summary>Coolant pump in 1/min.</summary>
    public double PumpSpeed { get; set; }

    /// <summary>Highest minus lowest cell, in mV.</summary>
    public double CellSpread { get; set; }

    public bool IsStarted { get; private set; }

    // The link follows 1 - (1 - t/T)³, which is at 95 % after 0.632 T.
    private TimeSpan PrechargeWhole => TimeSpan.FromSeconds(PrechargeSeconds / 0.632);

    public void Start(TimeSpan now)
    {
        if (IsStarted || IsInterlockOpen) return;
        IsStarted = true;
        _precharge = now + Wakes;
    }

    public void Stop()
    {
        IsStarted = false;
        _precharge = TimeSpan.MaxValue;
    }

    public bool IsPrecharging(TimeSpan now) => now >= _precharge && now < _precharge + PrechargeWhole;

    public bool IsReady(TimeSpan now) => IsStarted && !NeverReady && now >= _precharge + PrechargeWhole + ContactorsClose;

    /// <summary>How long it has been ready; null: it is not.</summary>
    public TimeSpan? ReadyFor(TimeSpan now) => IsReady(now) ? now - (_precharge + PrechargeWhole + ContactorsClose) : null;

    public bool IsChanging(TimeSpan now) => IsStarted && now < _precharge + PrechargeWhole + ContactorsClose;

    public double LinkVoltage(TimeSpan now)
    {
        if (!IsStarted || now < _precharge) return 0;
        var left = 1 - Math.Min(1, (now - _precharge) / PrechargeWhole);
        return left > 0 ? PackVoltage * (1 - (left * left * left)) : PackVoltage - LinkDrop;
    }

    public double Pump(TimeSpan now) => IsReady(now) ? PumpSpeed : 0;
}
