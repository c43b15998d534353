using EolSequencer.Language.Binding.Vehicles;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expectations;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>The type of value that an expectation can judge, as far as its own text says.</summary>
internal static class ExpectedShape
{
    /// <summary>The type; null when the text alone does not say. Nothing is reported.</summary>
    public static ValueShape? Of(YamlNode expect, Scope scope) => ExpectationParser.Parse(expect, new Report()) switch
    {
        ExpectationSyntax.Limit limit => Of(scope.Context.Vehicle.Limits.GetValueOrDefault(limit.Name.Text), scope),
        ExpectationSyntax.Window { Unit: { } unit } => ValueShape.Number(unit),
        ExpectationSyntax.Window => ValueShape.Count,
        ExpectationSyntax.Truth => ValueShape.Truth,
        ExpectationSyntax.Matches => ValueShape.Text(),
        ExpectationSyntax.Only => ValueShape.List,
        ExpectationSyntax.EqualTo equal => Of(equal.Wanted),
        ExpectationSyntax.OneOf one => one.Wanted.Select(Of).FirstOrDefault(shape => shape is not null),
        _ => null,
    };

    private static ValueShape? Of(LimitDefinition? limit, Scope scope) => limit switch
    {
        LimitDefinition.Single single => Of(single.Is, scope),
        LimitDefinition.Rows rows => Of(rows.All[0].Is, scope),
        LimitDefinition.ByIndex windows => Of(windows.Windows[0].Is, scope),
        _ => null,
    };

    private static ValueShape? Of(OperandSyntax operand)
    {
        if (operand is OperandSyntax.Number) return ValueShape.Count;
        if (operand is not OperandSyntax.Written written) return null;
        return QuantityParser.Parse(written.Part, new Report()) is { Operand: OperandSyntax.Number } quantity ? ValueShape.Number(quantity.Unit) : ValueShape.Text();
    }
}
