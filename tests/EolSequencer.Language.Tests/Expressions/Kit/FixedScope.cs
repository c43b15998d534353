using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Traces;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Tests.Expressions.Kit;

/// <summary>A scope whose values a test writes down by the names an author uses.</summary>
internal sealed class FixedScope : ExpressionScope
{
    private readonly Dictionary<string, Value> _values = new(StringComparer.Ordinal);
    private readonly Dictionary<string, ResultView> _results = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Trace> _traces = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _edges = new(StringComparer.Ordinal);
    private Expression? _expression;

    public Verdict Decided { get; init; } = Verdict.Pass;

    public override Verdict RunVerdict => Decided;

    /// <summary>The full id of the step that asks.</summary>
    public string Asker { get; init; } = "asker";

    public FixedScope With(string name, Value value)
    {
        _values[name] = value;
        return this;
    }

    public FixedScope With(string name, decimal number, string? unit = null, bool inexact = false) =>
        With(name, new NumberValue(number, unit is null ? null : UnitTable.Required(unit), inexact));

    public FixedScope With(string name, string text) => With(name, new TextValue(text));

    public FixedScope With(string name, bool truth) => With(name, TruthValue.Of(truth));

    public FixedScope Edges(string channel, int count)
    {
        _edges[channel] = count;
        return this;
    }

    public FixedScope Result(string id, Value? value, Verdict verdict = Verdict.Pass, double took = 1)
    {
        _results[id] = new ResultView(value, verdict, TimeSpan.FromSeconds(took));
        return this;
    }

    /// <param name="path">The group's full id and the channel, such as <c>run_up/rollers.speed</c>.</param>
    public FixedScope Trace(string path, Trace trace)
    {
        _traces[path] = trace;
        return this;
    }

    public Value Evaluate(Expression expression)
    {
        _expression = expression;
        Sample([.. expression.Channels.Select(use => _values.GetValueOrDefault(NameOf(use)))]);
        return expression.Evaluate(this);
    }

    public override Value Vehicle(string option) => _values[$"vehicle.{option}"];

    public override Value Order(string fact, string? index) => _values[index is null ? $"order.{fact}" : $"order.{fact}[{index}]"];

    public override Value Argument(string name) => _values[name];

    public override int Edges(int slot) => _edges[NameOf(_expression!.Channels[slot])];

    public override ResultView? Result(int slot) => _results.GetValueOrDefault(_expression!.Results[slot].Resolve(InForce(), Asker));

    public override Trace Trace(int slot)
    {
        var use = _expression!.Traces[slot];
        return _traces[$"{use.Group.Resolve(InForce(), Asker)}/{use.Channel.Resolve(InForce())}"];
    }

    protected override Value NoValue(int slot) => throw new InvalidOperationException($"the test gives {_expression!.Channels[slot]} no value");

    private string NameOf(ChannelUse use) =>
        use.Index is null ? use.ToString() : $"{use.Role}.{use.Channel}[{use.Index.Resolve(InForce())}]";

    private Arguments InForce() => _values.Where(pair => !pair.Key.Contains('.')).Aggregate(Arguments.None, (sum, pair) => sum.With(pair.Key, pair.Value));
}
