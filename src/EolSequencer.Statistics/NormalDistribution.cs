namespace EolSequencer.Statistics;

/// <summary>The standard normal distribution: mean 0, standard deviation 1.</summary>
public static class NormalDistribution
{
    private const double SeriesUpTo = 3;
    private static readonly double SqrtOfPi = Math.Sqrt(Math.PI);
    private static readonly double SqrtOfTwo = Math.Sqrt(2);

    /// <summary>The probability of a value not above <paramref name="z"/>; absolute error below 1e-14, in the lower tail also relative.</summary>
    /// <param name="z">In standard deviations; infinities are allowed.</param>
    public static double Cumulative(double z)
    {
        var x = Math.Abs(z) / SqrtOfTwo;
        var tail = x < SeriesUpTo ? (1 - Error(x)) / 2 : ComplementaryError(x) / 2;
        return z < 0 ? tail : 1 - tail;
    }

    // Every term is positive, so nothing cancels (Abramowitz and Stegun 7.1.6).
    private static double Error(double x)
    {
        var (term, sum) = (x, x);
        for (var n = 1; term > sum * 1e-17; n++)
        {
            term *= 2 * x * x / ((2 * n) + 1);
            sum += term;
        }

        return 2 / SqrtOfPi * Math.Exp(-x * x) * sum;
    }

    // The continued fraction of Abramowitz and Stegun 7.1.14, from its tail; 60 steps are enough from 3 on.
    private static double ComplementaryError(double x)
    {
        if (x > 40) return 0;
        var tail = x;
        for (var step = 60; step > 0; step--) tail = x + (step / 2.0 / tail);
        return Math.Exp(-x * x) / (SqrtOfPi * tail);
    }
}
