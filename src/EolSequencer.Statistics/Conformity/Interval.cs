namespace EolSequencer.Statistics.Conformity;

/// <summary>A closed interval of numbers; an end that is infinite is open.</summary>
public readonly record struct Interval(double Low, double High)
{
    /// <summary>The probability of a normally distributed value lying in it.</summary>
    /// <param name="mean">Mean of the value.</param>
    /// <param name="deviation">Its standard deviation, above zero.</param>
    public double Probability(double mean, double deviation)
    {
        if (Low > High) return 0;
        var (low, high) = ((Low - mean) / deviation, (High - mean) / deviation);

        // Above the mean the two tails are subtracted, which keeps the digits of small differences.
        return low > 0
            ? NormalDistribution.Cumulative(-low) - NormalDistribution.Cumulative(-high)
            : NormalDistribution.Cumulative(high) - NormalDistribution.Cumulative(low);
    }
}
