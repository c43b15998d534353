using EolSequencer.Model.Expressions;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Engine.Planning;

/// <summary>Decides conditions that name only the vehicle and its order.</summary>
public static class OrderScope
{
    /// <summary>Whether a condition holds for an order.</summary>
    public static bool IsTrue(Expression condition, Order order) => condition.IsTrue(new FactScope(order, Arguments.None));
}
