namespace EolSequencer.Simulators.Physics;

/// <summary>Warning lamps, telltales and the belt chime.</summary>
internal sealed class Cluster
{
    private const int Brake = 2;
    private const int RestraintLamp = 3;
    private const int Belt = 4;
    private const int Charge = 7;
    private const int EngineLamp = 8;
    private const int Oil = 9;
    private const int DriveLamp = 10;
    private const int Pack = 11;
    private readonly Van _van;

    public Cluster(Van van)
    {
        _van = van;
        var spread = van.Spread.Of("cluster");
        for (var i = 0; i < Lamps.Count; i++) CheckSeconds[i] = i == RestraintLamp ? spread.About(5.5, 0.15) : spread.About(3.2, 0.1);
        ChimeSeconds = spread.About(6, 0.15);
        OdometerKm = spread.About(6, 2);
    }

    /// <summary>In the order of their bits.</summary>
    public static IReadOnlyList<string> Lamps { get; } =
        ["abs", "stability", "brake", "restraint", "belt", "tyre", "steering", "charge", "engine", "oil", "drive", "pack"];

    /// <summary>In the order of their bits.</summary>
    public static IReadOnlyList<string> Telltales { get; } = ["high_beam", "left", "right", "passenger_bag_off"];

    /// <summary>How long each lamp is checked after the ignition comes on, in s.</summary>
    public double[] CheckSeconds { get; } = new double[12];

    public double ChimeSeconds { get; set; }

    public double OdometerKm { get; set; }

    /// <summary>Lamps that never come on.</summary>
    public bool[] DeadLamps { get; } = new bool[12];

    /// <summary>Lamps that never go out while the ignition is on.</summary>
    public bool[] StuckLamps { get; } = new bool[12];

    public bool[] DeadTelltales { get; } = new bool[4];

    /// <summary>Rows of the display that stay dark, which nobody but a person sees: upper, lower.</summary>
    public bool[] DarkRows { get; } = new bool[2];

    /// <summary>Whether this vehicle has a lamp.</summary>
    public bool Has(int lamp) => _van.Equipment.IsElectric ? lamp is not (EngineLamp or Oil) : lamp is not (DriveLamp or Pack);

    public bool IsLampOn(int lamp, TimeSpan now)
    {
        if (!_van.Ignition.IsOn || !Has(lamp) || DeadLamps[lamp]) return false;
        if (StuckLamps[lamp] || _van.Ignition.OnFor(now).TotalSeconds < CheckSeconds[lamp]) return true;
        return lamp switch
        {
            Brake => _van.Brakes.IsClampWanted,
            Belt => !_van.Restraint.IsBuckled(0),
            Charge or EngineLamp => !_van.DriveRuns(now),
            Oil => !(_van.Engine.RunningFor(now) is { } running && running.TotalSeconds >= _van.Engine.OilLampSeconds),
            _ => false,
        };
    }

    public bool Chimes(TimeSpan now) =>
        _van.Ignition.IsOn && _van.Ignition.OnFor(now).TotalSeconds < ChimeSeconds && !_van.Restraint.IsBuckled(0);

    public bool IsTelltaleOn(int telltale, TimeSpan now) => !DeadTelltales[telltale] && telltale switch
    {
        0 => _van.Ignition.IsOn && _van.Switches.IsHigh,
        1 or 2 => _van.Flasher.IsLit(telltale - 1, now),
        _ => _van.Ignition.IsOn,
    };

    /// <summary>Whether anything changes by itself: a lamp check, a flasher, a start.</summary>
    public bool IsMoving(TimeSpan now) =>
        _van.Flasher.IsRunning || _van.DriveIsChanging(now) ||
        (_van.Ignition.IsOn && _van.Ignition.OnFor(now).TotalSeconds < Longest(CheckSeconds, ChimeSeconds));

    private double Longest(double[] checks, double chime)
    {
        var longest = chime;
        foreach (var seconds in checks) longest = Math.Max(longest, seconds);
        return longest;
    }
}
