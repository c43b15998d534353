using EolSequencer.Model.Traces;
using EolSequencer.Model.Units;

namespace EolSequencer.Language.Expressions.Support;

/// <summary>Times and rates of traces as quantities of an expression.</summary>
internal static class TraceMoments
{
    private static readonly Unit OneInAMinute = UnitTable.Required("1/min");

    public static long Of<TTime>(TTime time) where TTime : struct, IQuantity<TTime> =>
        Moments.FromSeconds(ScopeValues.NumberIn(time, UnitTable.Second));

    public static TFrequency PerMinute<TFrequency>(decimal rate) where TFrequency : struct, IQuantity<TFrequency> => TFrequency.Of(rate, OneInAMinute);
}
