using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions.Compiling;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Expressions;

namespace EolSequencer.Language.Expressions;

/// <summary>All expressions of one load: they are gathered while files are bound and compiled together.</summary>
/// <param name="report">Where faults of expressions are told.</param>
/// <param name="cache">Where compiled code is kept from one start to the next.</param>
internal sealed class ExpressionBatch(Report report, ExpressionCache cache)
{
    private readonly List<ExpressionText> _texts = [];
    private readonly List<Action> _checks = [];

    /// <summary>SHA-256 of the compiled code, 64 lower-case hexadecimal digits; empty when there was nothing to compile.</summary>
    public string Hash { get; private set; } = "";

    /// <summary>Takes up an expression. It is returned at once and may be used once <see cref="Compile"/> has returned true.</summary>
    /// <param name="node">The text it stands in.</param>
    /// <param name="offset">Where it begins in the node's text, without brackets around it.</param>
    /// <param name="length">How many UTF-16 units it has.</param>
    /// <param name="names">What it may name.</param>
    /// <param name="wanted">What its value must be.</param>
    public Expression Add(YamlScalar node, int offset, int length, ExpressionNames names, Wanted wanted)
    {
        var expression = new Expression(node.Text.Substring(offset, length), node.PlaceOf(offset, length));
        _texts.Add(new ExpressionText(node, offset, names, wanted, expression));
        return expression;
    }

    /// <summary>Puts off a check that needs the shape of an expression; it runs at the end of a compilation without faults.</summary>
    public void Then(Action check) => _checks.Add(check);

    /// <summary>Completes every expression, or reports why that is not possible and returns false. Called once.</summary>
    public bool Compile()
    {
        if (cache.Live is { } live)
        {
            if (!live.Compile(_texts, report)) return false;
        }
        else if (_texts.Count > 0)
        {
            var key = ExpressionKey.Of(_texts);
            if ((cache.Find(key) ?? CompileAnew(key)) is not { } unit) return false;
            Hash = unit.Hash;
            var functions = UnitLoader.Load(unit);
            foreach (var (text, made) in _texts.Zip(unit.Expressions))
            {
                text.Expression.Complete(new Expression.Compiled(made.Shape, made.Channels, made.Results, functions[made.Function], made.IsInexact) { Traces = made.Traces });
            }
        }

        foreach (var check in _checks) check();
        return true;
    }

    private CompiledUnit? CompileAnew(string key)
    {
        var unit = UnitCompiler.Compile(_texts, report);
        if (unit is not null) cache.Store(key, unit);
        return unit;
    }
}
