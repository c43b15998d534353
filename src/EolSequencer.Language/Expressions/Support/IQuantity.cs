using EolSequencer.Model.Units;

namespace EolSequencer.Language.Expressions.Support;

/// <summary>A number with a unit inside an expression; each dimension in use has a struct of its own in the compiled unit.</summary>
public interface IQuantity
{
    decimal Number { get; }

    Unit Unit { get; }
}

/// <summary>What functions over quantities of one dimension need.</summary>
public interface IQuantity<TSelf> : IQuantity
    where TSelf : struct, IQuantity<TSelf>
{
    /// <summary>A quantity of this dimension.</summary>
    static abstract TSelf Of(decimal number, Unit unit);
}
