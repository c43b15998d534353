using System.Globalization;
using EolSequencer.Model.Events;

namespace EolSequencer.Benchmarks.WhatIf;

/// <summary>
/// How values move from vehicle to vehicle and over the weeks. A normal scatter of 6 % of the window on every value judged by a
/// window with two ends; the lamp currents drift by 8 % of theirs from the first vehicle to the last; and of vehicles 40 % to 43 % on the
/// line, the headlamp bulbs come from a lot that draws 45 % of the window less.
/// </summary>
internal sealed class Scatter(int vehicles)
{
    private const double Sigma = 0.06;
    private const double Drift = 0.08;
    private const double BadLot = -0.45;

    /// <summary>The value of a criterion on one vehicle, with as many decimals as it had.</summary>
    public decimal Of(CriterionResult one, string step, int vehicle)
    {
        var value = decimal.Parse(one.Value!, CultureInfo.InvariantCulture);
        var width = decimal.Parse(one.High!, CultureInfo.InvariantCulture) - decimal.Parse(one.Low!, CultureInfo.InvariantCulture);
        var line = (double)vehicle / vehicles;
        var moved = Sigma * Normal(step + one.Of, vehicle);
        if (step.StartsWith("lamps[", StringComparison.Ordinal)) moved += Drift * line;
        if (step.StartsWith("lamps[low_", StringComparison.Ordinal) && line is >= 0.40 and < 0.43) moved += BadLot;
        return decimal.Round(value + (width * (decimal)moved), value.Scale, MidpointRounding.ToEven);
    }

    /// <summary>A number of the standard normal distribution that depends on step and vehicle only.</summary>
    private static double Normal(string step, int vehicle)
    {
        var state = (ulong)vehicle * 0x9E3779B97F4A7C15UL;
        foreach (var letter in step) state = Mix(state ^ letter);
        var (first, second) = (Unit(Mix(state + 1)), Unit(Mix(state + 2)));
        return Math.Sqrt(-2 * Math.Log(first)) * Math.Cos(2 * Math.PI * second);
    }

    private static double Unit(ulong bits) => ((bits >> 11) + 0.5) / (1UL << 53);

    private static ulong Mix(ulong x)
    {
        x = (x ^ (x >> 30)) * 0xBF58476D1CE4E5B9UL;
        x = (x ^ (x >> 27)) * 0x94D049BB133111EBUL;
        return x ^ (x >> 31);
    }
}
