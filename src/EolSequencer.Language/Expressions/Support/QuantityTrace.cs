using EolSequencer.Model.Expressions;
using EolSequencer.Model.Traces;
using EolSequencer.Model.Units;

namespace EolSequencer.Language.Expressions.Support;

#pragma warning disable IDE1006 // Authors write these names; theirs are lower case.

/// <summary>A trace of quantities: what it gives are quantities of the channel's dimension. What wants a level takes the numbers with a unit first.</summary>
public readonly struct QuantityTrace<TValue, TTime>(ExpressionScope scope, Curve curve, Unit unit)
    where TValue : struct, IQuantity<TValue>
    where TTime : struct, IQuantity<TTime>
{
    [Means("the quantity at a moment, between two readings on the line through them")]
    [Inexact]
    public TValue at(TTime moment) => Value(Spent().At(TraceMoments.Of(moment)));

    [Means("the quantity at a moment in seconds")]
    [Inexact]
    public TValue at(decimal seconds) => Value(Spent().At(Moments.FromSeconds(seconds)));

    [Means("the part from one moment to another")]
    public QuantityTrace<TValue, TTime> between(TTime from, TTime to) => new(scope, Spent().Between(TraceMoments.Of(from), TraceMoments.Of(to)), unit);

    [Means("the part from one moment in seconds to another")]
    public QuantityTrace<TValue, TTime> between(decimal from, decimal to) => new(scope, Spent().Between(Moments.FromSeconds(from), Moments.FromSeconds(to)), unit);

    [Means("how many readings there are")]
    public decimal count => curve.Count;

    [Means("the first reading")]
    public TValue first => Value(Spent().First());

    [Means("the last reading")]
    public TValue last => Value(Spent().Last());

    [Means("the smallest reading")]
    public TValue min => Value(Spent().Min());

    [Means("the largest reading")]
    public TValue max => Value(Spent().Max());

    [Means("the moment of the smallest reading")]
    public TTime min_at => TTime.Of(Moments.Seconds(Spent().MinAt()), UnitTable.Second);

    [Means("the moment of the largest reading")]
    public TTime max_at => TTime.Of(Moments.Seconds(Spent().MaxAt()), UnitTable.Second);

    [Means("the mean over time")]
    [Inexact]
    public TValue mean => Value(Spent().Mean());

    private TValue Value(decimal number) => TValue.Of(number, unit);

    private Curve Spent()
    {
        scope.Spend(curve.Count);
        return curve;
    }
}
