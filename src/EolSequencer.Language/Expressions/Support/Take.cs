using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Expressions.Support;

/// <summary>
/// How a compiled expression takes values out of its scope. Where the expression gives a number, every number taken also
/// notes whether it came through binary floating point.
/// </summary>
public static class Take
{
    private const decimal TicksPerSecond = TimeSpan.TicksPerSecond;

    public static bool Truth(Value value) =>
        value is TruthValue truth ? truth.IsTrue : throw Faults.WrongKind(value, "yes or no");

    public static string Text(Value value) =>
        value is TextValue text ? text.Text : throw Faults.WrongKind(value, "a text");

    public static TextList List(Value value) =>
        value is ListValue list ? new TextList(list.Items) : throw Faults.WrongKind(value, "a list");

    /// <summary>A number without a unit.</summary>
    public static decimal Count(Value value) =>
        value is NumberValue { Unit: null } number ? number.Number : throw Faults.WrongKind(value, "a count");

    public static decimal Count(Value value, ref bool inexact)
    {
        inexact |= value is NumberValue { Inexact: true };
        return Count(value);
    }

    /// <summary>A number in a unit; the quick way when it already has that unit.</summary>
    public static decimal In(Value value, Unit unit) =>
        value is NumberValue number && ReferenceEquals(number.Unit, unit) ? number.Number : Converted(value, unit);

    public static decimal In(Value value, Unit unit, ref bool inexact)
    {
        inexact |= value is NumberValue { Inexact: true };
        return In(value, unit);
    }

    /// <summary>A quantity as it came.</summary>
    public static T Quantity<T>(Value value) where T : struct, IQuantity<T> =>
        value is NumberValue { Unit: { } unit } number ? T.Of(number.Number, unit) : throw Faults.WrongKind(value, "a number with a unit");

    public static T Quantity<T>(Value value, ref bool inexact) where T : struct, IQuantity<T>
    {
        inexact |= value is NumberValue { Inexact: true };
        return Quantity<T>(value);
    }

    /// <summary>The time a step took.</summary>
    public static Value Took(ResultView result) => new NumberValue(result.Took.Ticks / TicksPerSecond, UnitTable.Second);

    /// <summary>The value of a result, when there is one.</summary>
    public static bool TryValue(ResultView? result, [NotNullWhen(true)] out Value? value)
    {
        value = result?.Value;
        return value is not null;
    }

    /// <summary>A quantity in a unit of its dimension.</summary>
    public static decimal In<T>(T quantity, Unit unit) where T : struct, IQuantity<T> =>
        ReferenceEquals(quantity.Unit, unit) ? quantity.Number : Converted(quantity.Number, quantity.Unit, unit);

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static decimal Converted(Value value, Unit unit) =>
        value is NumberValue { Unit: { } from } number && from.Dimension == unit.Dimension
            ? Converted(number.Number, from, unit)
            : throw Faults.WrongKind(value, $"a number that converts into {unit}");

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static decimal Converted(decimal number, Unit from, Unit to) =>
        from.TryConvert(number, to, out var result) ? result : throw new OverflowException();
}
