namespace EolSequencer.Simulators.Physics;

/// <summary>Wheels at a standstill: tyre pressures, speeds, rims, the spare.</summary>
internal sealed class Wheels
{
    public Wheels(Van van)
    {
        var spread = van.Spread.Of("wheels");
        for (var i = 0; i < Names.Count; i++) Pressure[i] = spread.About(245, 1.2);
        SparePressure = spread.About(245, 1.2);
        HasAlloyRims = van.Equipment.HasAlloyRims;
        SteeringAngle = spread.About(0, 0.35);
    }

    /// <summary>In the order of their bits.</summary>
    public static IReadOnlyList<string> Names { get; } = ["fl", "fr", "rl", "rr"];

    /// <summary>kPa by the wheel's own sensor.</summary>
    public double[] Pressure { get; } = new double[4];

    /// <summary>kPa at the spare wheel.</summary>
    public double SparePressure { get; set; }

    /// <summary>km/h by the wheel's own sensor.</summary>
    public double[] Speed { get; } = new double[4];

    /// <summary>What is really bolted on, whatever was ordered.</summary>
    public bool HasAlloyRims { get; set; }

    /// <summary>Degrees of the steering wheel.</summary>
    public double SteeringAngle { get; set; }
}
