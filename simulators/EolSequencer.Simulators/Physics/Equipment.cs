namespace EolSequencer.Simulators.Physics;

/// <summary>What the vehicle is fitted with.</summary>
internal sealed record Equipment
{
    public bool IsElectric { get; init; }

    public bool HasAllWheelDrive { get; init; }

    public bool HasTwoRearDoors { get; init; }

    public bool HasHeatedMirrors { get; init; }

    public bool HasAlloyRims { get; init; }

    public bool HasTowCoupling { get; init; }

    /// <summary>Reads the options of an order: words as the vehicle type orrin knows them, <c>yes</c> and <c>no</c> for tow.</summary>
    /// <exception cref="ArgumentException">An option is missing or has a word that no such vehicle has.</exception>
    public static Equipment Of(IReadOnlyDictionary<string, string> options) => new()
    {
        HasAllWheelDrive = Is(options, "drive", "awd", "fwd"),
        IsElectric = Is(options, "powertrain", "electric", "petrol"),
        HasTwoRearDoors = Is(options, "doors", "double", "single"),
        HasHeatedMirrors = Is(options, "mirrors", "heated", "plain"),
        HasAlloyRims = Is(options, "rims", "alloy", "steel"),
        HasTowCoupling = Is(options, "tow", "yes", "no"),
    };

    private static bool Is(IReadOnlyDictionary<string, string> options, string name, string word, string other)
    {
        if (!options.TryGetValue(name, out var value)) throw new ArgumentException($"the option {name} is missing", nameof(options));
        if (value == word) return true;
        return value == other ? false : throw new ArgumentException($"the option {name} is {word} or {other}, not {value}", nameof(options));
    }
}
