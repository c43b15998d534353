using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Expressions.Support;

/// <summary>How a compiled expression hands its value over. The compiler picks the overload by the type of the expression.</summary>
public static class Give
{
    public static Value Out(bool truth, bool inexact, Unit[] units) => TruthValue.Of(truth);

    public static Value Out(string text, bool inexact, Unit[] units) => new TextValue(text);

    public static Value Out(TextList list, bool inexact, Unit[] units) => new ListValue(list.Items);

    public static Value Out(decimal number, bool inexact, Unit[] units) => new NumberValue(number, null, inexact);

    /// <summary>A quantity, in the unit that was settled for its dimension.</summary>
    /// <param name="units">The settled units, one for each dimension that the expression can come to.</param>
    public static Value Out<T>(T quantity, bool inexact, Unit[] units) where T : struct, IQuantity<T>
    {
        foreach (var unit in units)
        {
            if (unit.Dimension == quantity.Unit.Dimension) return new NumberValue(Take.In(quantity, unit), unit, inexact);
        }

        return new NumberValue(quantity.Number, quantity.Unit, inexact);
    }
}
