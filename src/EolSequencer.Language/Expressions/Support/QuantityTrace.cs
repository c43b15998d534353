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
    /// <summary>The quantity at a moment, between two readings on the line through them.</summary>
    [Inexact]
    public TValue at(TTime moment) => Value(Spent().At(TraceMoments.Of(moment)));

    /// <summary>The quantity at a moment in seconds.</summary>
    [Inexact]
    public TValue at(decimal seconds) => Value(Spent().At(Moments.FromSeconds(seconds)));

    /// <summary>The part from one moment to another.</summary>
    public QuantityTrace<TValue, TTime> between(TTime from, TTime to) => new(scope, Spent().Between(TraceMoments.Of(from), TraceMoments.Of(to)), unit);

    /// <summary>The part from one moment in seconds to another.</summary>
    public QuantityTrace<TValue, TTime> between(decimal from, decimal to) => new(scope, Spent().Between(Moments.FromSeconds(from), Moments.FromSeconds(to)), unit);

    /// <summary>How many readings there are.</summary>
    public decimal count => curve.Count;

    /// <summary>The first reading.</summary>
    public TValue first => Value(Spent().First());

    /// <summary>The last reading.</summary>
    public TValue last => Value(Spent().Last());

    /// <summary>The smallest reading.</summary>
    public TValue min => Value(Spent().Min());

    /// <summary>The largest reading.</summary>
    public TValue max => Value(Spent().Max());

    /// <summary>The moment of the smallest reading.</summary>
    public TTime min_at => TTime.Of(Moments.Seconds(Spent().MinAt()), UnitTable.Second);

    /// <summary>The moment of the largest reading.</summary>
    public TTime max_at => TTime.Of(Moments.Seconds(Spent().MaxAt()), UnitTable.Second);

    /// <summary>The mean over time.</summary>
    [Inexact]
    public TValue mean => Value(Spent().Mean());

    private TValue Value(decimal number) => TValue.Of(number, unit);

    private Curve Spent()
    {
        scope.Spend(curve.Count);
        return curve;
    }
}
