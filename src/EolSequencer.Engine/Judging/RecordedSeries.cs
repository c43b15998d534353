using System.Collections.Immutable;
using System.Globalization;
using EolSequencer.Model.Events;
using EolSequencer.Model.Traces;
using EolSequencer.Model.Values;

namespace EolSequencer.Engine.Judging;

/// <summary>The readings of a series as the values they were.</summary>
public static class RecordedSeries
{
    /// <summary>The numbers of a <c>sample</c>, without the readings that are missing.</summary>
    public static List<NumberValue> Numbers(SeriesRecorded series, ValueShape shape)
    {
        var numbers = new List<NumberValue>(series.Points.Length);
        foreach (var point in series.Points)
        {
            if (point.Value is { } text) numbers.Add((NumberValue)Of(text, shape));
        }

        return numbers;
    }

    /// <summary>The trace of a captured group: a missing reading opens a gap that the next value closes.</summary>
    public static Trace Trace(SeriesRecorded series, ValueShape shape)
    {
        var (from, length, lost) = series.Capture ?? throw new ArgumentException("the series is that of a sample", nameof(series));
        var points = ImmutableArray.CreateBuilder<TracePoint>(series.Points.Length);
        var gaps = ImmutableArray.CreateBuilder<TraceGap>();
        var cause = lost ?? "";
        long? open = null;
        foreach (var point in series.Points)
        {
            var at = point.At - from;
            if (point.Value is not { } text)
            {
                open ??= points.Count == 0 ? 0 : points[^1].At;
                continue;
            }

            if (open is { } begun) gaps.Add(new TraceGap(begun, at, cause));
            open = null;
            points.Add(new TracePoint(at, Of(text, shape)));
        }

        // Continuity that no missing reading explains was lost at the end: the group was cut short.
        if (open is null && lost is not null && gaps.Count == 0) open = points.Count == 0 ? 0 : points[^1].At;
        if (open is { } last) gaps.Add(new TraceGap(last, length, cause));
        return new Trace(series.Channel, shape, points.ToImmutable(), gaps.ToImmutable(), length);
    }

    private static Value Of(string text, ValueShape shape) => shape.Kind switch
    {
        ValueKind.Number or ValueKind.Time => new NumberValue(decimal.Parse(text, CultureInfo.InvariantCulture), shape.Unit),
        ValueKind.Truth => TruthValue.Of(text == "yes"),
        _ => new TextValue(text),
    };
}
