using System.Numerics;

namespace EolSequencer.Model.Tests.Units;

/// <summary>A ratio of whole numbers, as an independent judge of what a conversion must give.</summary>
internal readonly record struct ExactFraction(BigInteger Over, BigInteger Under)
{
    public static ExactFraction Of(decimal number)
    {
        Span<int> bits = stackalloc int[4];
        decimal.GetBits(number, bits);
        var size = ((BigInteger)(uint)bits[2] << 64) + ((BigInteger)(uint)bits[1] << 32) + (uint)bits[0];
        return new ExactFraction(number < 0 ? -size : size, BigInteger.Pow(10, number.Scale));
    }

    public static ExactFraction operator *(ExactFraction a, ExactFraction b) => new(a.Over * b.Over, a.Under * b.Under);

    public static ExactFraction operator /(ExactFraction a, ExactFraction b) => new(a.Over * b.Under, a.Under * b.Over);

    public static ExactFraction operator +(ExactFraction a, ExactFraction b) => new(a.Over * b.Under + b.Over * a.Under, a.Under * b.Under);

    public static ExactFraction operator -(ExactFraction a, ExactFraction b) => a + new ExactFraction(-b.Over, b.Under);

    public bool Is(ExactFraction other) => Over * other.Under == other.Over * Under;

    /// <summary>True when it is a decimal with so many places.</summary>
    public bool HasPlaces(int places) => (Over * BigInteger.Pow(10, places) % Under).IsZero;

    public double Size => Math.Abs((double)Over / (double)Under);
}
