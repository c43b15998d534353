namespace EolSequencer.Simulators.Physics;

/// <summary>The shop around the vehicle, and what stands ready for its tests.</summary>
internal sealed class Surroundings
{
    public Surroundings(Van van)
    {
        var spread = van.Spread.Of("shop");
        Temperature = spread.About(23, 1.5);
        BoardDistance = new double[Boards.Count];
        for (var i = 0; i < Boards.Count; i++) BoardDistance[i] = spread.About(0.8, 0.03);
    }

    /// <summary>The target boards, in the order of the distance sensors' bytes.</summary>
    public static IReadOnlyList<string> Boards { get; } =
        ["front_left", "front_mid_left", "front_mid_right", "front_right", "rear_left", "rear_mid_left", "rear_mid_right", "rear_right"];

    /// <summary>°C in the shop.</summary>
    public double Temperature { get; set; }

    /// <summary>What each distance sensor measures in m; not a number: the sensor has no value.</summary>
    public double[] BoardDistance { get; }
}
