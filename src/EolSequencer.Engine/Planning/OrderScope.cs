using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Engine.Planning;

/// <summary>What is decided before the first step, from the vehicle and its order.</summary>
public static class OrderScope
{
    /// <summary>Whether a condition holds for an order.</summary>
    public static bool IsTrue(Expression condition, Order order) => condition.IsTrue(new FactScope(order, Arguments.None));

    /// <summary>The value of an operand for an order; null when only readings or results of a run decide it, or it has none.</summary>
    /// <param name="arguments">Loop names and parameters in force.</param>
    public static Value? Known(Operand operand, Order order, Arguments arguments)
    {
        if (operand is Operand.Constant constant) return constant.Value;
        if (operand is not Operand.Computed { Expression: { IsKnownBeforeRun: true } expression }) return null;
        try
        {
            return expression.Evaluate(new FactScope(order, arguments));
        }
        catch (ExpressionFault)
        {
            return null;
        }
    }
}
