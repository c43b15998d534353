namespace EolSequencer.Simulators.Physics;

/// <summary>All lamps on the common supply, and what lights them.</summary>
internal sealed class Lamps
{
    private const int High = 2;
    private const int Position = 4;
    private const int Daytime = 6;
    private const int TurnFront = 8;
    private const int TurnRear = 10;
    private const int Tail = 12;
    private const int Reverse = 14;
    private const int Plate = 17;
    private const int Stop = 18;

    private static readonly (string Name, double Amps)[] Nominal =
    [
        ("low_left", 4.4), ("low_right", 4.4), ("high_left", 4.6), ("high_right", 4.6),
        ("position_left", 0.42), ("position_right", 0.42), ("daytime_left", 0.95), ("daytime_right", 0.95),
        ("turn_front_left", 1.75), ("turn_front_right", 1.75), ("turn_rear_left", 1.75), ("turn_rear_right", 1.75),
        ("tail_left", 0.42), ("tail_right", 0.42), ("reverse_left", 1.75), ("reverse_right", 1.75),
        ("fog_rear", 1.75), ("plate", 0.82),
        ("stop_left", 0.65), ("stop_right", 0.65), ("stop_high", 0.65),
    ];

    private readonly Van _van;
    private readonly LampCircuit[] _circuits;

    public Lamps(Van van)
    {
        _van = van;
        var spread = van.Spread.Of("lamps");
        _circuits = new LampCircuit[Nominal.Length];
        for (var i = 0; i < Nominal.Length; i++)
        {
            _circuits[i] = new LampCircuit(Nominal[i].Name, Nominal[i].Amps * spread.About(1, 0.025));
        }
    }

    /// <summary>The circuits that a diagnostic request can take over, in the order of their identifiers.</summary>
    public const int Controllable = 18;

    /// <summary>Names of all circuits.</summary>
    public static IEnumerable<string> Names => Nominal.Select(lamp => lamp.Name);

    public LampCircuit this[int index] => _circuits[index];

    public LampCircuit this[string name] => Array.Find(_circuits, circuit => circuit.Name == name) ?? throw new ArgumentException($"no lamp {name}", nameof(name));

    /// <summary>A diagnostic request takes a lamp over or, with null, gives it back.</summary>
    public void Take(int index, bool? on)
    {
        _circuits[index].Taken = on;
        Refresh();
        _van.Changed();
    }

    /// <summary>Looks at all switches again; whoever turns one calls it.</summary>
    public void Refresh()
    {
        var now = _van.Now;
        for (var i = 0; i < _circuits.Length; i++) _circuits[i].Switch(_circuits[i].Taken ?? WantedBySwitches(i), now);
    }

    /// <summary>Current of the lamp supply in A.</summary>
    public double SupplyCurrent(TimeSpan now)
    {
        var sum = 0.0;
        for (var i = 0; i < _circuits.Length; i++) sum += _circuits[i].CurrentAt(now) + FlashCurrent(i, now);
        return sum;
    }

    /// <summary>Whether a turn lamp gives light at this moment of the flasher's beat.</summary>
    public bool FlashesAlong(int index) => !_circuits[index].IsOpen && !_circuits[index].LooksWrong;

    /// <summary>The turn lamps of one side, front and rear.</summary>
    public (int Front, int Rear) TurnLamps(int side) => (TurnFront + side, TurnRear + side);

    private double FlashCurrent(int index, TimeSpan now)
    {
        if (index is < TurnFront or >= Tail || _circuits[index].IsSwitchedOn) return 0;
        return _van.Flasher.LitFor(index & 1, now) is { } lit ? _circuits[index].CurrentAfter(lit) : 0;
    }

    private bool WantedBySwitches(int index)
    {
        var switches = _van.Switches;
        var isLow = _van.Ignition.IsOn && switches.IsLow;
        return index switch
        {
            < High => isLow,
            < Position => _van.Ignition.IsOn && switches.IsHigh,
            < Daytime => switches.IsPark || isLow,
            < TurnFront => _van.IsDriveOn && !isLow,
            < Tail => false, // the flasher's, see FlashCurrent
            < Reverse => switches.IsPark || isLow,
            < Reverse + 2 => _van.Ignition.IsOn && _van.Selector.Position == Selector.Reverse,
            Plate => switches.IsPark || isLow,
            >= Stop => _van.Brakes.IsSwitchOn,
            _ => false,
        };
    }
}
