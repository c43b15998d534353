using EolSequencer.Model.Expressions;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Expressions.Support;

#pragma warning disable IDE1006 // Authors write these names; theirs are lower case.

/// <summary>
/// The functions an author may call. What goes through binary floating point gives back 12 significant digits and makes
/// the value inexact.
/// </summary>
public abstract class Functions
{
    private const int MostPower = 28;

    /// <summary>The number without its sign.</summary>
    public static decimal abs(decimal x) => Math.Abs(x);

    /// <summary>The quantity without its sign.</summary>
    public static T abs<T>(T x) where T : struct, IQuantity<T> => x.Number < 0 ? T.Of(-x.Number, x.Unit) : x;

    /// <summary>The smaller of two.</summary>
    public static decimal min(decimal a, decimal b) => Math.Min(a, b);

    /// <summary>The smaller of two quantities.</summary>
    public static T min<T>(T a, T b) where T : struct, IQuantity<T> => ScopeValues.NumberIn(b, a.Unit) < a.Number ? b : a;

    /// <summary>The larger of two.</summary>
    public static decimal max(decimal a, decimal b) => Math.Max(a, b);

    /// <summary>The larger of two quantities.</summary>
    public static T max<T>(T a, T b) where T : struct, IQuantity<T> => ScopeValues.NumberIn(b, a.Unit) > a.Number ? b : a;

    /// <summary>The nearest whole number; halves go away from zero.</summary>
    public static decimal round(decimal x) => Math.Round(x, MidpointRounding.AwayFromZero);

    /// <summary>The nearest number with so many decimals, 0 to 28; halves go away from zero.</summary>
    public static decimal round(decimal x, int decimals) => Math.Round(x, decimals, MidpointRounding.AwayFromZero);

    /// <summary>The largest whole number that is not larger.</summary>
    public static decimal floor(decimal x) => Math.Floor(x);

    /// <summary>The smallest whole number that is not smaller.</summary>
    public static decimal ceiling(decimal x) => Math.Ceiling(x);

    /// <summary>The number to a whole power from 0 to 28, exactly.</summary>
    public static decimal pow(decimal x, int power)
    {
        if (power is < 0 or > MostPower) throw new ExpressionFault($"pow takes a whole power from 0 to {MostPower}, not {power}");
        var product = 1m;
        for (var factor = 0; factor < power; factor++) product *= x;
        return product;
    }

    /// <summary>How unequal two sides of an axle are, in percent of the higher: (higher − lower) / higher.</summary>
    public static decimal imbalance(decimal a, decimal b) => (Math.Max(a, b) - Math.Min(a, b)) * 100 / Math.Max(a, b);

    /// <summary>The square root.</summary>
    [Inexact]
    public static decimal sqrt(decimal x) => Rounded(Math.Sqrt((double)x), "sqrt", x);

    /// <summary>The logarithm to base 10.</summary>
    [Inexact]
    public static decimal log10(decimal x) => Rounded(Math.Log10((double)x), "log10", x);

    /// <summary>The exponential function.</summary>
    [Inexact]
    public static decimal exp(decimal x) => Rounded(Math.Exp((double)x), "exp", x);

    /// <summary>The sine of an angle in radians.</summary>
    [Inexact]
    public static decimal sin(decimal x) => Rounded(Math.Sin((double)x), "sin", x);

    /// <summary>The cosine of an angle in radians.</summary>
    [Inexact]
    public static decimal cos(decimal x) => Rounded(Math.Cos((double)x), "cos", x);

    /// <summary>The tangent of an angle in radians.</summary>
    [Inexact]
    public static decimal tan(decimal x) => Rounded(Math.Tan((double)x), "tan", x);

    /// <summary>The angle in radians, from −π/2 to π/2, whose tangent this is.</summary>
    [Inexact]
    public static decimal atan(decimal x) => Rounded(Math.Atan((double)x), "atan", x);

    /// <summary>True when a text begins with another, by code point.</summary>
    public static bool starts(string text, string with) => text.StartsWith(with, StringComparison.Ordinal);

    /// <summary>True when a text ends with another, by code point.</summary>
    public static bool ends(string text, string with) => text.EndsWith(with, StringComparison.Ordinal);

    private static decimal Rounded(double result, string function, decimal x) =>
        FloatingNumber.TryFromDouble(result, out var number)
            ? number
            : throw new ExpressionFault($"{function}({NumberText.Of(x)}) is not finite");
}
