using EolSequencer.Model.Units;

namespace EolSequencer.Model.Values;

/// <summary>A number in a unit.</summary>
/// <param name="Number">The number, exactly as measured or written; trailing zeros are kept and do not matter for equality.</param>
/// <param name="Unit">Its unit; null for a count.</param>
/// <param name="Inexact">True when it came through binary floating point; such a number may not be judged with <c>equals</c>.</param>
public sealed record NumberValue(decimal Number, Unit? Unit, bool Inexact = false) : Value
{
    public override ValueKind Kind => ValueKind.Number;

    /// <summary>The number in another unit of the same dimension, exact whenever a decimal can hold it.</summary>
    /// <param name="unit">Null exactly when this value is a count; anything else is a broken assumption and throws.</param>
    /// <param name="number">The converted number.</param>
    /// <returns>False when the result is beyond what a decimal holds.</returns>
    public bool TryIn(Unit? unit, out decimal number)
    {
        if (Unit is not null && unit is not null) return Unit.TryConvert(Number, unit, out number);
        if (Unit is not null || unit is not null) throw new ArgumentException($"{this} does not convert into {unit?.Symbol ?? "a count"}", nameof(unit));
        number = Number;
        return true;
    }

    /// <summary>Number and symbol such as <c>1.60 A</c>; never an exponent.</summary>
    public override string ToString() =>
        Unit is null ? NumberText.Of(Number) : $"{NumberText.Of(Number)} {Unit.Symbol}";
}
