namespace EolSequencer.Simulators.Physics;

/// <summary>Airbag circuits, belts and the passenger seat's weighing.</summary>
internal sealed class Restraint
{
    private readonly Van _van;
    private readonly bool[] _isBuckled = new bool[2];

    public Restraint(Van van)
    {
        _van = van;
        var spread = van.Spread.Of("restraint");
        for (var i = 0; i < Loops.Count; i++) LoopOhms[i] = spread.About(2.2, 0.1);
        OccupantOffset = spread.About(0, 0.5);
    }

    /// <summary>In the order of their bytes.</summary>
    public static IReadOnlyList<string> Loops { get; } =
        ["driver_bag", "passenger_bag", "side_left", "side_right", "curtain_left", "curtain_right", "belt_left", "belt_right"];

    /// <summary>In the order of their bits.</summary>
    public static IReadOnlyList<string> Seats { get; } = ["driver", "passenger"];

    /// <summary>Resistance of each igniter loop in ohm.</summary>
    public double[] LoopOhms { get; } = new double[8];

    /// <summary>kg that the empty passenger seat weighs.</summary>
    public double OccupantOffset { get; set; }

    public int CrashEvents { get; set; }

    public bool[] DeadBuckles { get; } = new bool[2];

    /// <summary>Belts that jam.</summary>
    public bool[] JammedBelts { get; } = new bool[2];

    public bool IsBuckled(int seat) => _isBuckled[seat] && !DeadBuckles[seat];

    public void Buckle(int seat, bool isBuckled)
    {
        _isBuckled[seat] = isBuckled;
        _van.Changed();
    }
}
