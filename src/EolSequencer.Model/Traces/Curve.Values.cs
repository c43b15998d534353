namespace EolSequencer.Model.Traces;

/// <content>Single values: at a moment, extremes, mean.</content>
public sealed partial record Curve
{
    /// <summary>The number at a moment: that of the reading, or between two readings on the line through them, to 12 significant digits.</summary>
    /// <exception cref="Expressions.ExpressionFault">No reading before or behind the moment, or it falls into a gap.</exception>
    public decimal At(long moment)
    {
        var behind = IndexFrom(moment);
        if (behind < Points.Length && Points[behind].At == moment) return Points[behind].Number;
        RequireKnown(moment);
        if (behind == 0 || behind == Points.Length) throw Outside(moment);
        var (before, after) = (Points[behind - 1], Points[behind]);
        var share = (double)(moment - before.At) / (after.At - before.At);
        return ToTwelveDigits((double)before.Number + (share * (double)(after.Number - before.Number)), Name);
    }

    /// <summary>The smallest reading.</summary>
    public decimal Min() => Points[IndexOfMin()].Number;

    /// <summary>The largest reading.</summary>
    public decimal Max() => Points[IndexOfMax()].Number;

    /// <summary>The moment of the smallest reading, the first of equal ones.</summary>
    public long MinAt() => Points[IndexOfMin()].At;

    /// <summary>The moment of the largest reading, the first of equal ones.</summary>
    public long MaxAt() => Points[IndexOfMax()].At;

    /// <summary>The first reading.</summary>
    public decimal First()
    {
        RequireWhole();
        return Points[0].Number;
    }

    /// <summary>The last reading.</summary>
    public decimal Last()
    {
        RequireWhole();
        return Points[^1].Number;
    }

    /// <summary>
    /// The mean over time: the area under the lines between the readings, divided by the time from the first to the last; to 12
    /// significant digits. Readings that came close together do not count more than others.
    /// </summary>
    public decimal Mean()
    {
        RequireWhole();
        var time = Points[^1].At - Points[0].At;
        if (time == 0) return Points[0].Number;
        var area = 0.0;
        for (var at = 1; at < Points.Length; at++)
        {
            area += (double)(Points[at - 1].Number + Points[at].Number) / 2 * (Points[at].At - Points[at - 1].At);
        }

        return ToTwelveDigits(area / time, Name);
    }

    /// <summary>The first reading at or behind a moment.</summary>
    private int IndexFrom(long moment)
    {
        var (low, high) = (0, Points.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (Points[middle].At < moment) low = middle + 1;
            else high = middle;
        }

        return low;
    }

    private int IndexOfMin()
    {
        RequireWhole();
        var found = 0;
        for (var at = 1; at < Points.Length; at++)
        {
            if (Points[at].Number < Points[found].Number) found = at;
        }

        return found;
    }

    private int IndexOfMax()
    {
        RequireWhole();
        var found = 0;
        for (var at = 1; at < Points.Length; at++)
        {
            if (Points[at].Number > Points[found].Number) found = at;
        }

        return found;
    }
}
