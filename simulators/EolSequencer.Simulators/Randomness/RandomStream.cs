using System.Numerics;

namespace EolSequencer.Simulators.Randomness;

/// <summary>
/// Chance that can be repeated: a stream of numbers fixed by a seed and a name. Streams of different names do not
/// disturb each other, so a further draw in one place changes nothing elsewhere.
/// </summary>
/// <remarks>
/// SplitMix64 (Steele, Lea and Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014). Only adding,
/// multiplying and dividing are used behind it: the last digit of logarithms and exponentials differs between systems.
/// </remarks>
public sealed class RandomStream
{
    private const ulong GoldenGamma = 0x9E3779B97F4A7C15;
    private ulong _state;

    /// <summary>The stream of a name under a seed.</summary>
    public RandomStream(ulong seed, string name) => _state = Mix(seed ^ Mix(HashOf(name)));

    /// <summary>64 random bits.</summary>
    public ulong Next() => Mix(_state += GoldenGamma);

    /// <summary>A number from 0 up to but not including 1, in steps of 2^-53.</summary>
    public double Share() => (Next() >> 11) * (1.0 / (1UL << 53));

    /// <summary>A number between two bounds, the upper one not included.</summary>
    public double Between(double low, double high) => low + (Share() * (high - low));

    /// <summary>One of the numbers 0 up to but not including a count.</summary>
    public int Pick(int count)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        return (int)BigMul(Next(), (ulong)count);
    }

    /// <summary>
    /// About normally distributed, mean 0 and standard deviation 1, never beyond ±6: the sum of twelve even draws.
    /// </summary>
    public double Normal()
    {
        var sum = -6.0;
        for (var i = 0; i < 12; i++) sum += Share();
        return sum;
    }

    /// <summary>A duration as people take it: mostly near the median, sometimes much longer, never under half of it.</summary>
    /// <param name="median">Half of the durations are shorter.</param>
    /// <param name="spread">About the standard deviation of the logarithm; 0.3 for a practised hand.</param>
    public TimeSpan Duration(TimeSpan median, double spread)
    {
        var z = Math.Clamp(Normal(), -3, 3) * spread;
        return median * Math.Max(0.5, 1 + z + (z * z / 2) + (z * z * z / 6));
    }

    private static ulong BigMul(ulong left, ulong right) => Math.BigMul(left, right, out _);

    private static ulong Mix(ulong value)
    {
        value = (value ^ (value >> 30)) * 0xBF58476D1CE4E5B9;
        value = (value ^ (value >> 27)) * 0x94D049BB133111EB;
        return value ^ (value >> 31);
    }

    // FNV-1a over the UTF-16 units; only needs to keep names apart.
    private static ulong HashOf(string name)
    {
        var hash = 14695981039346656037UL;
        foreach (var unit in name) hash = BitOperations.RotateLeft((hash ^ unit) * 1099511628211UL, 5);
        return hash;
    }
}
