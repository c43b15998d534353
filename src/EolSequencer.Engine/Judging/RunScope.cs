using EolSequencer.Engine.Planning;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Engine.Judging;

/// <summary>What an expression of a step sees while the run goes on; one step's own, never shared between lanes.</summary>
internal sealed class RunScope(Order order, ResultBook results, string asker, Arguments arguments) : IExpressionScope
{
    private Expression? _expression;
    private Value?[] _channels = [];

    /// <summary>Set once the steps are over.</summary>
    public Verdict? Decided { get; init; }

    /// <summary>Evaluates an expression with the readings of its channels, in slot order.</summary>
    public Value Evaluate(Expression expression, Value?[] channels)
    {
        _expression = expression;
        _channels = channels;
        return expression.Evaluate(this);
    }

    /// <summary>Evaluates an expression that names no channel.</summary>
    public Value Evaluate(Expression expression) => Evaluate(expression, []);

    public Value Vehicle(string option) => FactScope.Of(order, option);

    public Value Order(string fact, string? index) => FactScope.Of(order, fact, index);

    public Value Argument(string name) => arguments[name];

    public Value Channel(int slot) =>
        _channels[slot] ?? throw new ExpressionFault($"{_expression?.Channels[slot]} has no value");

    public ResultView? Result(int slot) => results.Find(_expression!.Results[slot].Resolve(arguments, asker));

    public Verdict RunVerdict => Decided ?? throw new InvalidOperationException("the verdict is known after the steps");
}
