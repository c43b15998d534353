using System.Runtime.CompilerServices;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Model.Expressions;

namespace EolSequencer.Language.Tests.Expressions.Kit;

/// <summary>One load of a sequence with several expressions.</summary>
internal sealed class Load
{
    private static readonly string[] Sequence =
    [
        "bus.brake_switch",
        "bus.engine_speed.rpm >= 500 && vehicle.drive == \"awd\"",
        "bus.door_ajar[door] || bus.door_ajar[\"rear\"]",
        "imbalance(results.force[\"fl\"].N, results.force[wheel].N) > 15",
        "results.trim.or(0) > sqrt(bus.pressure.bar)",
        "order.software[ecu] == note",
        "max(bus.vehicle_speed, rollers.speed)",
        "bus.brake_switch",
    ];

    private Load(ExpressionBatch batch, Report report, IReadOnlyList<Expression> expressions)
    {
        Batch = batch;
        Report = report;
        Expressions = expressions;
    }

    public ExpressionBatch Batch { get; }

    public Report Report { get; }

    public IReadOnlyList<Expression> Expressions { get; }

    /// <summary>Loads eight expressions, or other ones.</summary>
    public static Load Of(ExpressionCache cache, params IReadOnlyList<string> texts)
    {
        var results = ResultScope.Start().Add("force", SmallPlant.Number("N"), ["fl", "fr", "rl", "rr"], false)
            .Add("trim", Model.Values.ValueShape.Count, [], true);
        var report = new Report();
        var batch = new ExpressionBatch(report, cache);
        var all = texts.Count == 0 ? Sequence : texts;
        var map = (Language.Yaml.YamlMap)Texts.ReadWell(string.Concat(all.Select((text, number) => $"e{number}: '{text}'\n")));
        var made = map.Entries.Select(entry => (Language.Yaml.YamlScalar)entry.Value)
            .Select(node => batch.Add(node, 0, node.Text.Length, SmallPlant.With(results), Wanted.Anything)).ToList();
        Assert.True(batch.Compile(), string.Join('\n', report.InOrder));
        return new Load(batch, report, made);
    }

    /// <summary>The assembly that the functions of a load live in.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static WeakReference Code(Expression expression) => new(Function(expression).Method.Module.Assembly);

    /// <summary>The compiled function behind an expression.</summary>
    public static Func<ExpressionScope, Model.Values.Value> Function(Expression expression) =>
        ((Expression.Compiled)typeof(Expression).GetField("_compiled", System.Reflection.BindingFlags.Instance | System.Reflection.BindingFlags.NonPublic)!
            .GetValue(expression)!).Evaluate;
}
