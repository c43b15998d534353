using EolSequencer.Model.Expressions;
using EolSequencer.Model.Traces;
using EolSequencer.Model.Units;

namespace EolSequencer.Language.Expressions.Support;

#pragma warning disable IDE1006 // Authors write these names; theirs are lower case.

/// <summary>A trace of yes and no.</summary>
public readonly struct SwitchTrace<TTime, TFrequency>(ExpressionScope scope, Switching curve)
    where TTime : struct, IQuantity<TTime>
    where TFrequency : struct, IQuantity<TFrequency>
{
    [Means("whether it is yes at a moment")]
    public bool at(TTime moment) => Spent().At(TraceMoments.Of(moment));

    [Means("whether it is yes at a moment in seconds")]
    public bool at(decimal seconds) => Spent().At(Moments.FromSeconds(seconds));

    [Means("the part from one moment to another")]
    public SwitchTrace<TTime, TFrequency> between(TTime from, TTime to) => new(scope, Spent().Between(TraceMoments.Of(from), TraceMoments.Of(to)));

    [Means("the part from one moment in seconds to another")]
    public SwitchTrace<TTime, TFrequency> between(decimal from, decimal to) => new(scope, Spent().Between(Moments.FromSeconds(from), Moments.FromSeconds(to)));

    [Means("how many readings there are")]
    public decimal count => curve.Count;

    [Means("how often it changes")]
    public decimal edges => Spent().Edges();

    [Means("the first moment at which it becomes yes")]
    public TTime rises => Time(Spent().Rises());

    [Means("the first moment at which it becomes no")]
    public TTime falls => Time(Spent().Falls());

    [Means("whole cycles a minute, from the first change to yes to the last")]
    [Inexact]
    public TFrequency rate => TraceMoments.PerMinute<TFrequency>(Spent().Rate());

    [Means("how long it is yes")]
    public TTime time_on => Time(Spent().TimeOn());

    private static TTime Time(long moment) => TTime.Of(Moments.Seconds(moment), UnitTable.Second);

    private Switching Spent()
    {
        scope.Spend(curve.Count);
        return curve;
    }
}
