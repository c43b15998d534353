namespace EolSequencer.Statistics.Proportions;

/// <summary>
/// How far a proportion moves when the same items are judged twice. Only items that come out otherwise say something of the
/// difference, so its interval is much narrower than that of two samples would be.
/// </summary>
/// <remarks>
/// Source: the adjusted interval of D. G. Bonett and R. M. Price, Journal of Educational and Behavioral Statistics 37 (2012), 479,
/// for the table of McNemar's test: one item is added to each of the two kinds that changed.
/// </remarks>
public static class PairedDifference
{
    /// <summary>The difference second minus first; null when nothing was judged.</summary>
    /// <param name="gained">Not hit the first time, hit the second.</param>
    /// <param name="lost">Hit the first time, not the second.</param>
    /// <param name="of">All items judged twice.</param>
    public static ProportionInterval? Of(long gained, long lost, long of)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(gained);
        ArgumentOutOfRangeException.ThrowIfNegative(lost);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(gained + lost, of);
        if (of == 0) return null;
        double up = (gained + 1.0) / (of + 2), down = (lost + 1.0) / (of + 2);
        var half = ProportionInterval.Z * Math.Sqrt((up + down - ((up - down) * (up - down))) / (of + 2));
        return new ProportionInterval((double)(gained - lost) / of, Math.Max(-1, up - down - half), Math.Min(1, up - down + half));
    }
}
