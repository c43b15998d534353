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
    [Means("the number at a moment, between two readings on the line through them")]
    [Inexact]
    public decimal at(TTime moment) => Spent().At(TraceMoments.Of(moment));

    [Means("the number at a moment in seconds")]
    [Inexact]
    public decimal at(decimal seconds) => Spent().At(Moments.FromSeconds(seconds));

    [Means("the part from one moment to another")]
    public NumberTrace<TTime, TFrequency> between(TTime from, TTime to) => new(scope, Spent().Between(TraceMoments.Of(from), TraceMoments.Of(to)));

    [Means("the part from one moment in seconds to another")]
    public NumberTrace<TTime, TFrequency> between(decimal from, decimal to) => new(scope, Spent().Between(Moments.FromSeconds(from), Moments.FromSeconds(to)));

    [Means("how many readings there are")]
    public decimal count => curve.Count;

    [Means("the first reading")]
    public decimal first => Spent().First();

    [Means("the last reading")]
    public decimal last => Spent().Last();

    [Means("the smallest reading")]
    public decimal min => Spent().Min();

    [Means("the largest reading")]
    public decimal max => Spent().Max();

    [Means("the moment of the smallest reading")]
    public TTime min_at => Time(Spent().MinAt());

    [Means("the moment of the largest reading")]
    public TTime max_at => Time(Spent().MaxAt());

    [Means("the mean over time")]
    [Inexact]
    public decimal mean => Spent().Mean();

    [Means("the change in a second, by least squares")]
    [Inexact]
    public decimal slope => Spent().Slope();

    [Means("the first moment at which it passes a level upwards")]
    public TTime rises(decimal level) => Time(Spent().Rises(level, level));

    [Means("the first moment at which it reaches the second level from the first or below")]
    public TTime rises(decimal from, decimal to) => Time(Spent().Rises(from, to));

    [Means("the first moment at which it passes a level downwards")]
    public TTime falls(decimal level) => Time(Spent().Falls(level, level));

    [Means("the first moment at which it reaches the second level from the first or above")]
    public TTime falls(decimal from, decimal to) => Time(Spent().Falls(from, to));

    [Means("how often it passes a level upwards")]
    public decimal count_rises(decimal level) => Spent().CountRises(level, level);

    [Means("how often it rises from one level to another")]
    public decimal count_rises(decimal from, decimal to) => Spent().CountRises(from, to);

    [Means("how often it passes a level downwards")]
    public decimal count_falls(decimal level) => Spent().CountFalls(level, level);

    [Means("how often it falls from one level to another")]
    public decimal count_falls(decimal from, decimal to) => Spent().CountFalls(from, to);

    [Means("cycles a minute, counted where it passes a level upwards")]
    [Inexact]
    public TFrequency rate(decimal level) => TraceMoments.PerMinute<TFrequency>(Spent().Rate(level, level));

    [Means("cycles a minute, counted where it rises from one level to another")]
    [Inexact]
    public TFrequency rate(decimal from, decimal to) => TraceMoments.PerMinute<TFrequency>(Spent().Rate(from, to));

    [Means("how long it lies above a level")]
    public TTime time_above(decimal level) => Time(Spent().TimeAbove(level));

    [Means("how long it lies below a level")]
    public TTime time_below(decimal level) => Time(Spent().TimeBelow(level));

    [Means("the moment from which on it stays within a band around a target")]
    public TTime settles(decimal target, decimal band) => Time(Spent().Settles(target, band));

    [Means("this trace divided by another, at each of its own readings")]
    [Inexact]
    public NumberTrace<TTime, TFrequency> over(NumberTrace<TTime, TFrequency> other) => new(scope, Spent().Over(other.Spent()));

    [Means("the first moment at which a ratio steps from near one number to near another and stays")]
    public TTime ratio_step(decimal from, decimal to, TTime dwell) => Time(Spent().RatioStep(from, to, TraceMoments.Of(dwell)));

    [Means("the first moment at which a ratio steps from near one number to near another and stays, for so many seconds")]
    public TTime ratio_step(decimal from, decimal to, decimal dwell) => Time(Spent().RatioStep(from, to, Moments.FromSeconds(dwell)));

    private static TTime Time(long moment) => TTime.Of(Moments.Seconds(moment), UnitTable.Second);

    private Curve Spent()
    {
        scope.Spend(curve.Count);
        return curve;
    }
}
