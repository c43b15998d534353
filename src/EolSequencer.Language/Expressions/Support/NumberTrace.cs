using EolSequencer.Model.Expressions;
using EolSequencer.Model.Traces;
using EolSequencer.Model.Units;

namespace EolSequencer.Language.Expressions.Support;

#pragma warning disable IDE1006 // Authors write these names; theirs are lower case.

/// <summary>
/// A trace of plain numbers, or of numbers taken in a unit. Moments are times since the group began; where one is wanted, a
/// time or a bare number of seconds may stand.
/// </summary>
public readonly struct NumberTrace<TTime, TFrequency>(ExpressionScope scope, Curve curve)
    where TTime : struct, IQuantity<TTime>
    where TFrequency : struct, IQuantity<TFrequency>
{
    /// <summary>The number at a moment, between two readings on the line through them.</summary>
    [Inexact]
    public decimal at(TTime moment) => Spent().At(TraceMoments.Of(moment));

    /// <summary>The number at a moment in seconds.</summary>
    [Inexact]
    public decimal at(decimal seconds) => Spent().At(Moments.FromSeconds(seconds));

    /// <summary>The part from one moment to another.</summary>
    public NumberTrace<TTime, TFrequency> between(TTime from, TTime to) => new(scope, Spent().Between(TraceMoments.Of(from), TraceMoments.Of(to)));

    /// <summary>The part from one moment in seconds to another.</summary>
    public NumberTrace<TTime, TFrequency> between(decimal from, decimal to) => new(scope, Spent().Between(Moments.FromSeconds(from), Moments.FromSeconds(to)));

    /// <summary>How many readings there are.</summary>
    public decimal count => curve.Count;

    /// <summary>The first reading.</summary>
    public decimal first => Spent().First();

    /// <summary>The last reading.</summary>
    public decimal last => Spent().Last();

    /// <summary>The smallest reading.</summary>
    public decimal min => Spent().Min();

    /// <summary>The largest reading.</summary>
    public decimal max => Spent().Max();

    /// <summary>The moment of the smallest reading.</summary>
    public TTime min_at => Time(Spent().MinAt());

    /// <summary>The moment of the largest reading.</summary>
    public TTime max_at => Time(Spent().MaxAt());

    /// <summary>The mean over time.</summary>
    [Inexact]
    public decimal mean => Spent().Mean();

    /// <summary>The change in a second, by least squares.</summary>
    [Inexact]
    public decimal slope => Spent().Slope();

    /// <summary>The first moment at which it passes a level upwards.</summary>
    public TTime rises(decimal level) => Time(Spent().Rises(level, level));

    /// <summary>The first moment at which it reaches the second level from the first or below.</summary>
    public TTime rises(decimal from, decimal to) => Time(Spent().Rises(from, to));

    /// <summary>The first moment at which it passes a level downwards.</summary>
    public TTime falls(decimal level) => Time(Spent().Falls(level, level));

    /// <summary>The first moment at which it reaches the second level from the first or above.</summary>
    public TTime falls(decimal from, decimal to) => Time(Spent().Falls(from, to));

    /// <summary>How often it passes a level upwards.</summary>
    public decimal count_rises(decimal level) => Spent().CountRises(level, level);

    /// <summary>How often it rises from one level to another.</summary>
    public decimal count_rises(decimal from, decimal to) => Spent().CountRises(from, to);

    /// <summary>How often it passes a level downwards.</summary>
    public decimal count_falls(decimal level) => Spent().CountFalls(level, level);

    /// <summary>How often it falls from one level to another.</summary>
    public decimal count_falls(decimal from, decimal to) => Spent().CountFalls(from, to);

    /// <summary>Cycles a minute, counted where it passes a level upwards.</summary>
    [Inexact]
    public TFrequency rate(decimal level) => TraceMoments.PerMinute<TFrequency>(Spent().Rate(level, level));

    /// <summary>Cycles a minute, counted where it rises from one level to another.</summary>
    [Inexact]
    public TFrequency rate(decimal from, decimal to) => TraceMoments.PerMinute<TFrequency>(Spent().Rate(from, to));

    /// <summary>How long it lies above a level.</summary>
    public TTime time_above(decimal level) => Time(Spent().TimeAbove(level));

    /// <summary>How long it lies below a level.</summary>
    public TTime time_below(decimal level) => Time(Spent().TimeBelow(level));

    /// <summary>The moment from which on it stays within a band around a target.</summary>
    public TTime settles(decimal target, decimal band) => Time(Spent().Settles(target, band));

    /// <summary>This trace divided by another, at each of its own readings.</summary>
    [Inexact]
    public NumberTrace<TTime, TFrequency> over(NumberTrace<TTime, TFrequency> other) => new(scope, Spent().Over(other.Spent()));

    /// <summary>The first moment at which a ratio steps from near one number to near another and stays.</summary>
    public TTime ratio_step(decimal from, decimal to, TTime dwell) => Time(Spent().RatioStep(from, to, TraceMoments.Of(dwell)));

    /// <summary>The same with the time to stay in seconds.</summary>
    public TTime ratio_step(decimal from, decimal to, decimal dwell) => Time(Spent().RatioStep(from, to, Moments.FromSeconds(dwell)));

    private static TTime Time(long moment) => TTime.Of(Moments.Seconds(moment), UnitTable.Second);

    private Curve Spent()
    {
        scope.Spend(curve.Count);
        return curve;
    }
}
