using System.Collections.Immutable;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Values;

namespace EolSequencer.Model.Traces;

/// <content>One curve over another, and where that ratio steps: gears.</content>
public sealed partial record Curve
{
    /// <summary>
    /// This curve divided by another, at each reading of this one for which the other is known; to 12 significant digits. Where
    /// the other is 0 there is a gap.
    /// </summary>
    /// <exception cref="ExpressionFault">One of them has a gap.</exception>
    public Curve Over(Curve other)
    {
        RequireWhole();
        other.RequireWhole();
        var points = ImmutableArray.CreateBuilder<CurvePoint>(Points.Length);
        var gaps = ImmutableArray.CreateBuilder<TraceGap>();
        long? gapFrom = null;
        var last = 0L;
        foreach (var point in Points)
        {
            if (point.At < other.Points[0].At || point.At > other.Points[^1].At) continue;
            var divisor = other.At(point.At);
            if (divisor == 0)
            {
                gapFrom ??= last;
                continue;
            }

            if (gapFrom is { } from) gaps.Add(new TraceGap(from, point.At, $"{other.Name} is 0"));
            gapFrom = null;
            last = point.At;
            points.Add(point with { Number = ToTwelveDigits((double)point.Number / (double)divisor, Name) });
        }

        if (gapFrom is { } open) gaps.Add(new TraceGap(open, Length, $"{other.Name} is 0"));
        return new Curve($"{Name} over {other.Name}", points.ToImmutable(), gaps.ToImmutable(), Length);
    }

    /// <summary>
    /// The first moment at which a ratio steps from the neighbourhood of one number to that of another and stays: it passes the
    /// geometric mean of both, after having been on the one side for <paramref name="dwell"/> and before staying on the other
    /// side that long.
    /// </summary>
    /// <param name="from">Above zero, such as the ratio of the second gear.</param>
    /// <param name="to">Above zero and not equal to <paramref name="from"/>.</param>
    /// <param name="dwell">Microseconds on either side; what is shorter is a slip or a step in between.</param>
    /// <exception cref="ExpressionFault">It never does.</exception>
    /// <remarks>Neighbours of a gear are told apart in the logarithm of the ratio, where the middle is the geometric mean.</remarks>
    public long RatioStep(decimal from, decimal to, long dwell)
    {
        RequireWhole(2);
        if (from <= 0 || to <= 0 || from == to) throw new ExpressionFault($"a ratio does not step from {NumberText.Of(from)} to {NumberText.Of(to)}");
        var middle = ToTwelveDigits(Math.Sqrt((double)from * (double)to), Name);
        var direction = to > from ? 1 : -1;
        var since = Points[0].At; // the present side has been held since then
        long? step = null; // a step that has not stayed long enough yet
        for (var at = 1; at < Points.Length; at++)
        {
            var (before, after) = ((Points[at - 1].Number - middle) * direction >= 0, (Points[at].Number - middle) * direction >= 0);
            if (before != after)
            {
                var passing = Passing(Points[at - 1], Points[at], middle);
                if (step is { } stayed && passing - stayed >= dwell) return stayed;
                step = after && passing - since >= dwell ? passing : null;
                since = passing;
            }
            else if (step is { } held && Points[at].At - held >= dwell)
            {
                return held;
            }
        }

        throw new ExpressionFault($"{Name} does not step from {NumberText.Of(from)} to {NumberText.Of(to)} with {Moments.Text(dwell)} on either side");
    }
}
