using System.Collections.Immutable;

namespace EolSequencer.Model.Units;

/// <summary>One entry of the unit table. There is one instance per unit, so units compare by reference.</summary>
/// <remarks>
/// A value v of this unit is v × <see cref="Factor"/> + <see cref="Offset"/> in the base unit of its dimension. The base
/// is chosen so that the factors are finite decimals (km/h, 1/min, °F …), not because the SI calls it a base.
/// </remarks>
public sealed class Unit
{
    internal Unit(string symbol, Dimension dimension, decimal factor, decimal offset, string expressionName, ImmutableArray<string> otherSpellings)
    {
        Symbol = symbol;
        Dimension = dimension;
        Factor = factor;
        Offset = offset;
        ExpressionName = expressionName;
        OtherSpellings = otherSpellings;
    }

    /// <summary>The spelling that records, reports and messages use, such as <c>N·m</c>.</summary>
    public string Symbol { get; }

    public Dimension Dimension { get; }

    /// <summary>Size of this unit in base units; positive.</summary>
    public decimal Factor { get; }

    /// <summary>Where this unit's zero lies, in base units; zero except for temperatures.</summary>
    public decimal Offset { get; }

    /// <summary>The C# name by which an expression takes a number in this unit: <c>km_h</c>, <c>percent</c>, <c>celsius</c>.</summary>
    public string ExpressionName { get; }

    /// <summary>Further spellings a file may use for this unit, such as <c>Nm</c>; each belongs to one unit only.</summary>
    public ImmutableArray<string> OtherSpellings { get; }

    /// <summary>Converts a value of this unit into another unit of the same dimension.</summary>
    /// <param name="value">The number in this unit.</param>
    /// <param name="to">A unit of the same dimension; another dimension is a broken assumption and throws.</param>
    /// <param name="result">Exact whenever a decimal can hold it, for numbers of up to ten digits; else rounded at the 28th digit.</param>
    /// <returns>False when the result is beyond what a decimal holds (about 7.9e28).</returns>
    public bool TryConvert(decimal value, Unit to, out decimal result)
    {
        RequireSameDimension(to);
        result = value;
        if (ReferenceEquals(this, to))
        {
            return true;
        }

        try
        {
            result = (value * Factor + (Offset - to.Offset)) / to.Factor;
            return true;
        }
        catch (OverflowException)
        {
            return false;
        }
    }

    /// <summary>Converts a width (a tolerance, an uncertainty, a step) of this unit: only the size counts, not the zero point.</summary>
    /// <param name="width">The width in this unit.</param>
    /// <param name="to">A unit of the same dimension; another dimension is a broken assumption and throws.</param>
    /// <returns>The width in the other unit: 1 K wide is 1.8 °F wide.</returns>
    public decimal ConvertWidth(decimal width, Unit to)
    {
        RequireSameDimension(to);
        return ReferenceEquals(this, to) ? width : width * Factor / to.Factor;
    }

    /// <summary>The canonical symbol.</summary>
    public override string ToString() => Symbol;

    private void RequireSameDimension(Unit other)
    {
        if (other.Dimension != Dimension)
        {
            throw new ArgumentException($"{Symbol} ({Dimension.Word()}) does not convert into {other.Symbol} ({other.Dimension.Word()})", nameof(other));
        }
    }
}
