using System.Collections.Immutable;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Model.Traces;

/// <summary>
/// Numbers over time. Between two readings it is a straight line; before the first and behind the last reading it is not
/// known. A feature that is not there (no crossing, too few readings, a gap) throws an <see cref="ExpressionFault"/> that says
/// so; it never gives a number in its place.
/// </summary>
public sealed partial record Curve : Timeline
{
    /// <summary>A curve of known points.</summary>
    /// <param name="points">In order of time.</param>
    public Curve(string name, ImmutableArray<CurvePoint> points, ImmutableArray<TraceGap> gaps, long length)
        : base(name, gaps, length) => Points = points;

    /// <summary>The readings, in order of time.</summary>
    public ImmutableArray<CurvePoint> Points { get; }

    /// <inheritdoc/>
    public override int Count => Points.Length;

    /// <summary>The numbers of a trace.</summary>
    /// <param name="unit">A unit of the trace's dimension; null: the trace has none.</param>
    /// <exception cref="ExpressionFault">A number is too large in that unit.</exception>
    public static Curve Of(Trace trace, Unit? unit)
    {
        var points = ImmutableArray.CreateBuilder<CurvePoint>(trace.Points.Length);
        foreach (var (at, value) in trace.Points)
        {
            if (!((NumberValue)value).TryIn(unit, out var number)) throw new ExpressionFault($"{value} is too large in {unit}");
            points.Add(new CurvePoint(at, number));
        }

        return new Curve(trace.Channel, points.MoveToImmutable(), trace.Gaps, trace.Length);
    }

    /// <summary>The part from one moment to another, with the readings at its ends; moments stay those of the whole.</summary>
    /// <exception cref="ExpressionFault">An end lies outside the capture.</exception>
    public Curve Between(long from, long to)
    {
        RequirePart(from, to);
        return new Curve(Name, [.. Points.Where(point => point.At >= from && point.At <= to)], GapsBetween(from, to), Length);
    }

    /// <summary>The moment at which the line between two neighbours passes a number; to the nearest microsecond.</summary>
    private static long Passing(CurvePoint before, CurvePoint after, decimal number)
    {
        var share = (number - before.Number) / (after.Number - before.Number);
        return before.At + (long)Math.Round(share * (after.At - before.At), MidpointRounding.AwayFromZero);
    }

    private static decimal ToTwelveDigits(double number, string name) =>
        FloatingNumber.TryFromDouble(number, out var result) ? result : throw new ExpressionFault($"{name} is not finite");
}

/// <summary>A number at a moment.</summary>
/// <param name="At">Whole microseconds since the capture began.</param>
public readonly record struct CurvePoint(long At, decimal Number);
