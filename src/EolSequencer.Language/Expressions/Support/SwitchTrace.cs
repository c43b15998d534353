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
    /// <summary>Whether it is yes at a moment.</summary>
    public bool at(TTime moment) => Spent().At(TraceMoments.Of(moment));

    /// <summary>Whether it is yes at a moment in seconds.</summary>
    public bool at(decimal seconds) => Spent().At(Moments.FromSeconds(seconds));

    /// <summary>The part from one moment to another.</summary>
    public SwitchTrace<TTime, TFrequency> between(TTime from, TTime to) => new(scope, Spent().Between(TraceMoments.Of(from), TraceMoments.Of(to)));

    /// <summary>The part from one moment in seconds to another.</summary>
    public SwitchTrace<TTime, TFrequency> between(decimal from, decimal to) => new(scope, Spent().Between(Moments.FromSeconds(from), Moments.FromSeconds(to)));

    /// <summary>How many readings there are.</summary>
    public decimal count => curve.Count;

    /// <summary>How often it changes.</summary>
    public decimal edges => Spent().Edges();

    /// <summary>The first moment at which it becomes yes.</summary>
    public TTime rises => Time(Spent().Rises());

    /// <summary>The first moment at which it becomes no.</summary>
    public TTime falls => Time(Spent().Falls());

    /// <summary>Whole cycles a minute, from the first change to yes to the last.</summary>
    [Inexact]
    public TFrequency rate => TraceMoments.PerMinute<TFrequency>(Spent().Rate());

    /// <summary>How long it is yes.</summary>
    public TTime time_on => Time(Spent().TimeOn());

    private static TTime Time(long moment) => TTime.Of(Moments.Seconds(moment), UnitTable.Second);

    private Switching Spent()
    {
        scope.Spend(curve.Count);
        return curve;
    }
}
