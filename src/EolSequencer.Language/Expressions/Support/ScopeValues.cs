using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Traces;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Expressions.Support;

/// <summary>
/// How a compiled expression takes values out of its scope and hands its own over. Where the expression gives a number, the
/// noting forms also keep whether a number came through binary floating point.
/// </summary>
/// <remarks>
/// The class of a unit inherits these, and each has a name of its own: the compiler finds them at once, which is most of
/// the time that compiling two hundred short expressions takes.
/// </remarks>
public abstract class ScopeValues : Functions
{
    /// <summary>
    /// The longest text an expression takes or makes; whatever is done to it is then a matter of microseconds. The longest
    /// data record of one ISO 15765-2 message, 4,095 bytes, read as a text fits.
    /// </summary>
    public const int MostLetters = 4096;

    private const decimal TicksPerSecond = TimeSpan.TicksPerSecond;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool Truth(Value value) =>
        value is TruthValue truth ? truth.IsTrue : throw WrongKind(value, "yes or no");

    public static string Text(Value value) =>
        value is TextValue text ? Bounded(text.Text) : throw WrongKind(value, "a text");

    public static TextList List(Value value) =>
        value is ListValue list ? new TextList(list.Items) : throw WrongKind(value, "a list");

    /// <summary>A number without a unit.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static decimal Count(Value value) =>
        value is NumberValue { Unit: null } number ? number.Number : throw WrongKind(value, "a count");

    public static decimal CountNoting(Value value, ref bool inexact)
    {
        inexact |= value is NumberValue { Inexact: true };
        return Count(value);
    }

    /// <summary>A number in a unit; the quick way when it already has that unit.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static decimal In(Value value, Unit unit) =>
        value is NumberValue number && ReferenceEquals(number.Unit, unit) ? number.Number : Converted(value, unit);

    public static decimal InNoting(Value value, Unit unit, ref bool inexact)
    {
        inexact |= value is NumberValue { Inexact: true };
        return In(value, unit);
    }

    /// <summary>A quantity as it came.</summary>
    public static T Quantity<T>(Value value) where T : struct, IQuantity<T> =>
        value is NumberValue { Unit: { } unit } number ? T.Of(number.Number, unit) : throw WrongKind(value, "a number with a unit");

    public static T QuantityNoting<T>(Value value, ref bool inexact) where T : struct, IQuantity<T>
    {
        inexact |= value is NumberValue { Inexact: true };
        return Quantity<T>(value);
    }

    /// <summary>A quantity in a unit of its dimension.</summary>
    public static decimal NumberIn<T>(T quantity, Unit unit) where T : struct, IQuantity<T> =>
        ReferenceEquals(quantity.Unit, unit) ? quantity.Number : Converted(quantity.Number, quantity.Unit, unit);

    /// <summary>The value of a result, when there is one.</summary>
    public static bool HasValue(ResultView? result, [NotNullWhen(true)] out Value? value)
    {
        value = result?.Value;
        return value is not null;
    }

    /// <summary>The time a step took.</summary>
    public static Value Took(ResultView result) => new NumberValue(result.Took.Ticks / TicksPerSecond, UnitTable.Second);

    /// <summary>The verdict as a word.</summary>
    public static string Word(Verdict verdict) => verdict.Word();

    /// <summary>A step that is named without <c>.or(…)</c> has no value.</summary>
    public static ExpressionFault Missing(string path) => new($"{path} has no value");

    /// <summary>A text that is not too long.</summary>
    public static string Bounded(string text) => text.Length <= MostLetters
        ? text
        : throw new ExpressionFault(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"a text of {text.Length} letters is more than the {MostLetters} an expression takes"));

    /// <summary>A trace of numbers, in a unit; null: they have none.</summary>
    public static NumberTrace<TTime, TFrequency> NumberTraceOf<TTime, TFrequency>(ExpressionScope scope, int slot, Unit? unit)
        where TTime : struct, IQuantity<TTime>
        where TFrequency : struct, IQuantity<TFrequency> => new(scope, CurveOf(scope, slot, unit));

    public static NumberTrace<TTime, TFrequency> NumberTraceNoting<TTime, TFrequency>(ExpressionScope scope, int slot, Unit? unit, ref bool inexact)
        where TTime : struct, IQuantity<TTime>
        where TFrequency : struct, IQuantity<TFrequency>
    {
        inexact |= IsInexact(scope.Trace(slot));
        return NumberTraceOf<TTime, TFrequency>(scope, slot, unit);
    }

    /// <summary>A trace of quantities.</summary>
    public static QuantityTrace<TValue, TTime> QuantityTraceOf<TValue, TTime>(ExpressionScope scope, int slot, Unit unit)
        where TValue : struct, IQuantity<TValue>
        where TTime : struct, IQuantity<TTime> => new(scope, CurveOf(scope, slot, unit), unit);

    public static QuantityTrace<TValue, TTime> QuantityTraceNoting<TValue, TTime>(ExpressionScope scope, int slot, Unit unit, ref bool inexact)
        where TValue : struct, IQuantity<TValue>
        where TTime : struct, IQuantity<TTime>
    {
        inexact |= IsInexact(scope.Trace(slot));
        return QuantityTraceOf<TValue, TTime>(scope, slot, unit);
    }

    /// <summary>A trace of yes and no.</summary>
    public static SwitchTrace<TTime, TFrequency> SwitchTraceOf<TTime, TFrequency>(ExpressionScope scope, int slot)
        where TTime : struct, IQuantity<TTime>
        where TFrequency : struct, IQuantity<TFrequency>
    {
        var trace = scope.Trace(slot);
        scope.Spend(trace.Points.Length);
        return new(scope, Switching.Of(trace));
    }

    /// <summary>The value of a condition.</summary>
    public static Value Condition(bool truth) => TruthValue.Of(truth);

    /// <summary>A number without a unit.</summary>
    public static Value Number(decimal number, bool inexact) => new NumberValue(number, null, inexact);

    public static Value Out(bool truth, bool inexact, Unit[] units) => TruthValue.Of(truth);

    public static Value Out(string text, bool inexact, Unit[] units) => new TextValue(text);

    public static Value Out(TextList list, bool inexact, Unit[] units) => new ListValue(list.Items);

    public static Value Out(decimal number, bool inexact, Unit[] units) => Number(number, inexact);

    /// <summary>A quantity, in the unit that was settled for its dimension.</summary>
    /// <param name="units">The settled units, one for each dimension that the expression can come to.</param>
    public static Value Out<T>(T quantity, bool inexact, Unit[] units) where T : struct, IQuantity<T>
    {
        foreach (var unit in units)
        {
            if (unit.Dimension == quantity.Unit.Dimension) return new NumberValue(NumberIn(quantity, unit), unit, inexact);
        }

        return new NumberValue(quantity.Number, quantity.Unit, inexact);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static decimal Converted(Value value, Unit unit) =>
        value is NumberValue { Unit: { } from } number && from.Dimension == unit.Dimension
            ? Converted(number.Number, from, unit)
            : throw WrongKind(value, $"a number that converts into {unit}");

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static decimal Converted(decimal number, Unit from, Unit to) =>
        from.TryConvert(number, to, out var result) ? result : throw new OverflowException();

    private static Curve CurveOf(ExpressionScope scope, int slot, Unit? unit)
    {
        var trace = scope.Trace(slot);
        scope.Spend(trace.Points.Length);
        return Curve.Of(trace, unit);
    }

    private static bool IsInexact(Trace trace)
    {
        foreach (var point in trace.Points)
        {
            if (point.Value is NumberValue { Inexact: true }) return true;
        }

        return false;
    }

    private static ExpressionFault WrongKind(Value value, string wanted) => new($"'{value}' came where {wanted} was due");
}
