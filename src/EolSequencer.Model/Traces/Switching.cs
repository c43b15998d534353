using System.Collections.Immutable;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Values;

namespace EolSequencer.Model.Traces;

/// <summary>
/// Yes and no over time: what a reading says holds until the next one, the last until the end of the capture. As with
/// <see cref="Curve"/>, a feature that is not there throws.
/// </summary>
public sealed record Switching : Timeline
{
    /// <summary>A curve of known points.</summary>
    /// <param name="points">In order of time.</param>
    public Switching(string name, ImmutableArray<SwitchPoint> points, ImmutableArray<TraceGap> gaps, long length)
        : base(name, gaps, length) => Points = points;

    /// <summary>The readings, in order of time.</summary>
    public ImmutableArray<SwitchPoint> Points { get; }

    /// <inheritdoc/>
    public override int Count => Points.Length;

    /// <summary>Until when the last reading holds.</summary>
    public long End { get; private init; } = -1;

    private long Until => End < 0 ? Length : End;

    /// <summary>The truth values of a trace.</summary>
    public static Switching Of(Trace trace) => new(
        trace.Channel, [.. trace.Points.Select(point => new SwitchPoint(point.At, ((TruthValue)point.Value).IsTrue))], trace.Gaps, trace.Length);

    /// <summary>The part from one moment to another; what held at its start is its first point.</summary>
    /// <exception cref="ExpressionFault">An end lies outside the capture.</exception>
    public Switching Between(long from, long to)
    {
        RequirePart(from, to);
        var inside = Points.Where(point => point.At > from && point.At <= to);
        var held = Points.LastOrDefault(point => point.At <= from, new SwitchPoint(-1, false));
        return new Switching(Name, [.. held.At < 0 ? inside : inside.Prepend(held with { At = from })], GapsBetween(from, to), Length) { End = to };
    }

    /// <summary>Whether it is on at a moment.</summary>
    /// <exception cref="ExpressionFault">No reading before the moment, or it falls into a gap.</exception>
    public bool At(long moment)
    {
        RequireKnown(moment);
        if (moment > Until) throw Outside(moment);
        var held = Points.LastOrDefault(point => point.At <= moment, new SwitchPoint(-1, false));
        return held.At < 0 ? throw Outside(moment) : held.IsOn;
    }

    /// <summary>How often it changes.</summary>
    public int Edges()
    {
        RequireWhole();
        return Changes(true).Count + Changes(false).Count;
    }

    /// <summary>The first moment at which it goes from no to yes.</summary>
    public long Rises() => Changes(true) is [var first, ..] ? first : throw new ExpressionFault($"{Name} never becomes yes in this part of the trace");

    /// <summary>The first moment at which it goes from yes to no.</summary>
    public long Falls() => Changes(false) is [var first, ..] ? first : throw new ExpressionFault($"{Name} never becomes no in this part of the trace");

    /// <summary>Whole cycles a minute, from the first change to yes to the last; to 12 significant digits.</summary>
    public decimal Rate() => Cycles.Rate(Changes(true), Name);

    /// <summary>How long it is yes, all stretches added up, in microseconds.</summary>
    public long TimeOn()
    {
        RequireWhole();
        var time = 0L;
        for (var at = 0; at < Points.Length; at++)
        {
            if (Points[at].IsOn) time += (at + 1 < Points.Length ? Points[at + 1].At : Until) - Points[at].At;
        }

        return time;
    }

    private List<long> Changes(bool to)
    {
        RequireWhole();
        var found = new List<long>();
        for (var at = 1; at < Points.Length; at++)
        {
            if (Points[at].IsOn == to && Points[at - 1].IsOn != to) found.Add(Points[at].At);
        }

        return found;
    }
}

/// <summary>A truth value at a moment.</summary>
/// <param name="At">Whole microseconds since the capture began.</param>
public readonly record struct SwitchPoint(long At, bool IsOn);
