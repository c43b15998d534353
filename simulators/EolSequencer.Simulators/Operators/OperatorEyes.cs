using EolSequencer.Simulators.Physics;

namespace EolSequencer.Simulators.Operators;

/// <summary>What a person sees on the vehicle: each names the place of what is wrong, null when nothing is.</summary>
internal static class OperatorEyes
{
    private const int BrakeLamp = 2;
    private static readonly string[] Corners = ["front_left", "front_right", "rear_left", "rear_right"];
    private static readonly string[] Sides = ["left", "right"];

    /// <summary>The first of some lamps that is dark or looks wrong; for a stop lamp only its place.</summary>
    public static string? Dark(Van van, params ReadOnlySpan<string> lamps)
    {
        foreach (var name in lamps)
        {
            var lamp = van.Lamps[name];
            if (lamp.IsLit && !lamp.LooksWrong) continue;
            return name.StartsWith("stop_", StringComparison.Ordinal) ? name["stop_".Length..] : name;
        }

        return null;
    }

    /// <summary>Whether all turn lamps flash, and together.</summary>
    public static string? HazardLamps(Van van)
    {
        if (!van.Flasher.IsRunning || van.Flasher.IsDead) return Corners[0];
        for (var side = 0; side < 2; side++)
        {
            var (front, rear) = van.Lamps.TurnLamps(side);
            if (!van.Lamps.FlashesAlong(front)) return Corners[side];
            if (!van.Lamps.FlashesAlong(rear)) return Corners[2 + side];
        }

        return van.Flasher.RightLag > 0 ? Corners[1] : null;
    }

    /// <summary>Whether every warning symbol was to be seen when the ignition came on.</summary>
    public static string? LampCheck(Van van)
    {
        if (!van.Ignition.IsOn || van.Cluster.DarkRows[0]) return Row(0);
        if (van.Cluster.DarkRows[1]) return Row(Cluster.Lamps.Count - 1);
        for (var lamp = 0; lamp < Cluster.Lamps.Count; lamp++)
        {
            if (van.Cluster.Has(lamp) && van.Cluster.DeadLamps[lamp]) return Row(lamp);
        }

        return null;
    }

    /// <summary>Whether a warning symbol is left beside that of the parking brake.</summary>
    public static string? LampsLeft(Van van)
    {
        for (var lamp = 0; lamp < Cluster.Lamps.Count; lamp++)
        {
            if (lamp != BrakeLamp && van.Cluster.IsLampOn(lamp, van.Now)) return Row(lamp);
        }

        return null;
    }

    /// <summary>Whether water reached the glass when the washer was pulled.</summary>
    public static string? Spray(Van van) => van.Wipers.HasSprayed ? Side(van.Wipers.BlockedJets) : Sides[0];

    /// <summary>The first side that is marked.</summary>
    public static string? Side(bool[] marked) => First(marked, Sides);

    /// <summary>The name of the first that is marked.</summary>
    public static string? First(bool[] marked, IReadOnlyList<string> names)
    {
        var first = Array.IndexOf(marked, true);
        return first >= 0 ? names[first] : null;
    }

    private static string Row(int lamp) => lamp < 6 ? "upper_row" : "lower_row";
}
