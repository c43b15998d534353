using EolSequencer.Model.Expressions;
using EolSequencer.Model.Values;

namespace EolSequencer.Model.Traces;

/// <summary>Moments of a trace: whole microseconds since its capture began.</summary>
public static class Moments
{
    /// <summary>Microseconds in a second.</summary>
    public const decimal PerSecond = 1_000_000;

    private const decimal MostSeconds = 1_000_000;

    /// <summary>The nearest whole microsecond.</summary>
    /// <param name="seconds">From −1,000,000 to 1,000,000.</param>
    /// <exception cref="ExpressionFault">The time is longer than a run can be.</exception>
    public static long FromSeconds(decimal seconds) => Math.Abs(seconds) <= MostSeconds
        ? (long)Math.Round(seconds * PerSecond, MidpointRounding.AwayFromZero)
        : throw new ExpressionFault($"{NumberText.Of(seconds)} s is no time in a trace");

    /// <summary>In seconds, exactly.</summary>
    public static decimal Seconds(long moment) => moment / PerSecond;

    /// <summary>For people: <c>2.104 s</c>.</summary>
    public static string Text(long moment) => $"{NumberText.Of(Seconds(moment) / 1.0000000000m)} s";
}
