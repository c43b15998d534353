namespace EolSequencer.Statistics.Proportions;

/// <summary>The score interval of a proportion, without correction for continuity.</summary>
/// <remarks>Source: E. B. Wilson, Journal of the American Statistical Association 22 (1927), 209; compared with others in Statistics in Medicine 17 (1998), 857, method 3.</remarks>
public static class WilsonInterval
{
    /// <summary>The interval; null when nothing was counted.</summary>
    /// <param name="hits">0 to <paramref name="of"/>.</param>
    public static ProportionInterval? Of(long hits, long of)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(hits);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(hits, of);
        if (of == 0) return null;
        const double Square = ProportionInterval.Z * ProportionInterval.Z;
        var share = (double)hits / of;
        var centre = (share + (Square / (2 * of))) / (1 + (Square / of));
        var half = ProportionInterval.Z * Math.Sqrt((share * (1 - share) / of) + (Square / (4.0 * of * of))) / (1 + (Square / of));
        return new ProportionInterval(share, hits == 0 ? 0 : centre - half, hits == of ? 1 : centre + half);
    }
}
