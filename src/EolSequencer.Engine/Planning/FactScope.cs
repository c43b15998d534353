using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Traces;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Engine.Planning;

/// <summary>What is known before the first step: the vehicle, its order, parameters and loop names.</summary>
internal sealed class FactScope(Order order, Arguments arguments) : ExpressionScope
{
    public override Value Vehicle(string option) => Of(order, option);

    public override Value Order(string fact, string? index) => Of(order, fact, index);

    public override Value Argument(string name) => arguments[name];

    protected override Value NoValue(int slot) => throw new InvalidOperationException("no channel is read before the first step");

    public override int Edges(int slot) => throw new InvalidOperationException("no channel is read before the first step");

    public override ResultView? Result(int slot) => throw new InvalidOperationException("there is no result before the first step");

    public override Trace Trace(int slot) => throw new InvalidOperationException("there is no trace before the first step");

    // No expression that decides a plan names it; what else names it has no value yet.
    public override Verdict RunVerdict => throw new ExpressionFault("there is no verdict before the first step");

    /// <summary>An option, or the identification number under the name <c>vin</c>.</summary>
    internal static Value Of(Order order, string option) =>
        option == "vin" ? new TextValue(order.Vin.Text)
        : order.Options.TryGetValue(option, out var value) ? value
        : throw new ExpressionFault($"the order has no option '{option}'");

    /// <summary>A fact of the order.</summary>
    internal static Value Of(Order order, string fact, string? index)
    {
        var key = index is null ? fact : $"{fact}[{index}]";
        return order.Facts.TryGetValue(key, out var value) ? value : throw new ExpressionFault($"the order does not say {key}");
    }
}
