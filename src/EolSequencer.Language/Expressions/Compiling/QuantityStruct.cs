using System.Text;
using EolSequencer.Model.Units;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>Writes the C# struct for quantities of one dimension: its units by name, and what may be done with two of them.</summary>
internal static class QuantityStruct
{
    private static readonly string[] Comparisons = ["<", "<=", ">", ">=", "==", "!="];

    public static void Write(Dimension dimension, StringBuilder text)
    {
        var type = CodeText.Type(dimension);
        text.Append($$"""

            public readonly struct {{type}}(decimal number, Unit unit) : IQuantity<{{type}}>
            {
                private readonly decimal _number = number;
                private readonly Unit _unit = unit;
                decimal IQuantity.Number => _number;
                Unit IQuantity.Unit => _unit;
                static {{type}} IQuantity<{{type}}>.Of(decimal number, Unit unit) => new(number, unit);
                private decimal _As({{type}} other) => ScopeValues.NumberIn(this, other._unit);
                private {{type}} _With(decimal number) => new(number, _unit);

            """);
        // A name of ours begins with _, which no unit's name does.
        foreach (var unit in UnitTable.Of(dimension))
        {
            text.Line($"    private static readonly Unit {CodeText.Field(unit)} = UnitTable.Required({CodeText.Literal(unit.Symbol)});");
            text.Line($"    public decimal {unit.ExpressionName} => ScopeValues.NumberIn(this, {CodeText.Field(unit)});");
        }

        foreach (var comparison in Comparisons)
        {
            text.Line($"    public static bool operator {comparison}({type} a, {type} b) => a._number {comparison} b._As(a);");
        }

        if (HasArithmetic(dimension))
        {
            text.Append($$"""
                    public static {{type}} operator +({{type}} a, {{type}} b) => a._With(a._number + b._As(a));
                    public static {{type}} operator -({{type}} a, {{type}} b) => a._With(a._number - b._As(a));
                    public static {{type}} operator -({{type}} a) => a._With(-a._number);
                    public static {{type}} operator *({{type}} a, decimal b) => a._With(a._number * b);
                    public static {{type}} operator *(decimal a, {{type}} b) => b._With(a * b._number);
                    public static {{type}} operator /({{type}} a, decimal b) => a._With(a._number / b);
                    public static decimal operator /({{type}} a, {{type}} b) => a._number / b._As(a);

                """);
        }

        text.Line("    public override bool Equals(object? other) => false;");
        text.Line("    public override int GetHashCode() => 0;");
        text.Line("}");
    }

    /// <summary>False where the zero of the scale is arbitrary: two temperatures or two sound levels are not added.</summary>
    public static bool HasArithmetic(Dimension dimension) => dimension is not (Dimension.Temperature or Dimension.SoundLevel);
}
