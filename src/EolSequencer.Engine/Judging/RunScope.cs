using EolSequencer.Engine.Planning;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Traces;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Engine.Judging;

/// <summary>What an expression of a step sees while the run goes on; one step's own, never shared between lanes.</summary>
internal sealed class RunScope(Order order, ResultBook results, string asker, Arguments arguments) : ExpressionScope
{
    private Expression? _expression;
    private int[]? _edges;

    /// <summary>Set once the steps are over.</summary>
    public Verdict? Decided { get; init; }

    /// <summary>Says whether the step has used up its time; null for what has no time limit.</summary>
    public Func<bool>? TimeIsOver { get; set; }

    protected override bool IsOverdue => TimeIsOver?.Invoke() ?? false;

    /// <summary>Evaluates an expression with the readings of its channels, in slot order.</summary>
    /// <param name="edges">How often each has changed while the step waits; null for a step that does not wait.</param>
    public Value Evaluate(Expression expression, Value?[] channels, int[]? edges = null)
    {
        _expression = expression;
        Sample(channels);
        _edges = edges;
        return expression.Evaluate(this);
    }

    /// <summary>Evaluates an expression that names no channel.</summary>
    public Value Evaluate(Expression expression) => Evaluate(expression, []);

    public override Value Vehicle(string option) => FactScope.Of(order, option);

    public override Value Order(string fact, string? index) => FactScope.Of(order, fact, index);

    public override Value Argument(string name) => arguments[name];

    protected override Value NoValue(int slot) =>
        throw new ExpressionFault($"{_expression?.Channels[slot]} has no value");

    public override int Edges(int slot) =>
        _edges is null ? throw new ExpressionFault("edges are counted only while a step waits for a condition") : _edges[slot];

    public override ResultView? Result(int slot) => results.Find(_expression!.Results[slot].Resolve(arguments, asker));

    public override Trace Trace(int slot)
    {
        var use = _expression!.Traces[slot];
        var (group, channel) = (use.Group.Resolve(arguments, asker), use.Channel.Resolve(arguments));
        return results.FindTrace(group, channel) ?? throw new ExpressionFault($"'{group}' has left no trace of {channel} in this run");
    }

    public override Verdict RunVerdict => Decided ?? throw new InvalidOperationException("the verdict is known after the steps");
}
