using EolSequencer.Model.Expressions;
using EolSequencer.Model.Values;

namespace EolSequencer.Model.Traces;

/// <content>How long it is somewhere, and when it comes to stay.</content>
public sealed partial record Curve
{
    /// <summary>How long it lies above a level, all stretches added up, in microseconds.</summary>
    public long TimeAbove(decimal level) => TimeBeyond(level, 1);

    /// <summary>How long it lies below a level, all stretches added up, in microseconds.</summary>
    public long TimeBelow(decimal level) => TimeBeyond(level, -1);

    /// <summary>The moment from which on it stays within a band around a target until the end of the trace.</summary>
    /// <param name="band">Half the width of the band, not negative; its edges belong to it.</param>
    /// <exception cref="ExpressionFault">The last reading lies outside, or there are fewer than two.</exception>
    /// <remarks>Settling as for the step response of a system: the last entry into the band that is kept.</remarks>
    public long Settles(decimal target, decimal band)
    {
        RequireWhole(2);
        if (band < 0) throw new ExpressionFault($"the band around {NumberText.Of(target)} is {NumberText.Of(band)}, which is negative");
        var inside = Points.Length;
        while (inside > 0 && Math.Abs(Points[inside - 1].Number - target) <= band) inside--;
        if (inside == Points.Length)
        {
            throw new ExpressionFault($"{Name} does not settle: it ends at {NumberText.Of(Points[^1].Number)}, outside {NumberText.Of(target)} ± {NumberText.Of(band)}");
        }

        if (inside == 0) return Points[0].At;
        var outside = Points[inside - 1];
        return Passing(outside, Points[inside], outside.Number > target ? target + band : target - band);
    }

    private long TimeBeyond(decimal level, int side)
    {
        RequireWhole(2);
        var time = 0L;
        for (var at = 1; at < Points.Length; at++)
        {
            var (before, after) = (Points[at - 1], Points[at]);
            var (isBefore, isAfter) = ((before.Number - level) * side > 0, (after.Number - level) * side > 0);
            if (isBefore && isAfter) time += after.At - before.At;
            else if (isBefore) time += Passing(before, after, level) - before.At;
            else if (isAfter) time += after.At - Passing(before, after, level);
        }

        return time;
    }
}
