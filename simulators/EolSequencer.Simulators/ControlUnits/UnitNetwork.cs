namespace EolSequencer.Simulators.ControlUnits;

/// <summary>The control units of one vehicle, as they know of each other.</summary>
internal sealed class UnitNetwork(IReadOnlyList<ControlUnit> units)
{
    private static readonly string[] VinKeepers = ["brakes", "restraint", "cluster"];

    /// <summary>In the order of the vehicle type file.</summary>
    public IReadOnlyList<ControlUnit> Units => units;

    /// <summary>Units that do not keep the vehicle number that the gateway passes on.</summary>
    public HashSet<string> Deaf { get; } = [];

    /// <summary>Units that answer but that the gateway does not hear.</summary>
    public int Unheard { get; set; }

    /// <summary>How many the gateway hears on the network.</summary>
    public int CountHeard()
    {
        var count = -Unheard;
        foreach (var unit in units) count += unit.IsAwake ? 1 : 0;
        return count;
    }

    /// <summary>The unit of a name, or null when the vehicle has none.</summary>
    public ControlUnit? Find(string name)
    {
        foreach (var unit in units)
        {
            if (unit.Name == name) return unit;
        }

        return null;
    }

    /// <summary>The gateway hands a new vehicle number to those that keep a copy.</summary>
    public void PassOnVin(string vin)
    {
        foreach (var name in VinKeepers)
        {
            if (!Deaf.Contains(name) && Find(name) is { IsAwake: true } keeper) keeper.Memory.Vin = vin;
        }
    }
}
