using System.Collections.Immutable;
using EolSequencer.Model.Traces;

namespace EolSequencer.Model.Tests.Traces;

/// <summary>Curves as tests write them down: pairs of seconds and numbers.</summary>
internal static class Curves
{
    public static Curve Of(params ReadOnlySpan<(double Seconds, double Number)> points) => With([], points);

    public static Curve With(ImmutableArray<TraceGap> gaps, params ReadOnlySpan<(double Seconds, double Number)> points)
    {
        var all = ImmutableArray.CreateBuilder<CurvePoint>(points.Length);
        foreach (var (seconds, number) in points) all.Add(new CurvePoint(Micro(seconds), (decimal)number));
        return new Curve("bus.speed", all.ToImmutable(), gaps, all.Count == 0 ? 0 : all[^1].At);
    }

    /// <summary>A function of time, read in even steps from 0.</summary>
    public static Curve Sampled(Func<double, double> function, double until, double step)
    {
        var points = new (double, double)[(int)Math.Round(until / step) + 1];
        for (var at = 0; at < points.Length; at++) points[at] = (at * step, function(at * step));
        return Of(points);
    }

    /// <summary>A switch that begins off at 0 and changes after each of these milliseconds in turn.</summary>
    public static Switching Pattern(params ReadOnlySpan<int> milliseconds)
    {
        var points = ImmutableArray.CreateBuilder<SwitchPoint>();
        points.Add(new SwitchPoint(0, false));
        var (at, isOn) = (0L, false);
        foreach (var length in milliseconds)
        {
            at += length * 1000;
            isOn = !isOn;
            points.Add(new SwitchPoint(at, isOn));
        }

        return new Switching("bus.lamp", points.ToImmutable(), [], at);
    }

    public static long Micro(double seconds) => (long)Math.Round(seconds * 1e6);
}
