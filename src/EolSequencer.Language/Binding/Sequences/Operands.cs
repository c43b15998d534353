using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expectations;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Reads values that are written down or stand as C# in brackets. Null always means: already reported.</summary>
internal static class Operands
{
    /// <summary>A value of a type.</summary>
    /// <param name="names">What the C# may name.</param>
    public static Operand? Read(YamlNode node, string what, ValueShape shape, ExpressionNames names, BindingContext context)
    {
        if (node is YamlScalar scalar && ScalarPart.Whole(scalar) is { Span: ['(', ..] } part)
        {
            return Code(part, context.Report) is { } code
                ? new Operand.Computed(context.Batch.Add(scalar, code.Start, code.Length, names, Wanted.Of(shape)))
                : null;
        }

        return WrittenValue.Read(node, what, shape, context.Report) is { } value ? new Operand.Constant(value) : null;
    }

    /// <summary>A time.</summary>
    public static Operand? Time(YamlNode? node, string what, Scope scope) =>
        node is null ? null : Read(node, what, ValueShape.Time, scope.Operands, scope.Context);

    private static ScalarPart? Code(ScalarPart part, Report report)
    {
        var close = CodeBrackets.Close(part.Span, 0);
        if (close == part.Length - 1) return part.From(1, close - 1).Trim();
        if (close < 0) report.Add(ExpectationCodes.OpenBracket, part.From(0, 1).Place, "this bracket is not closed");
        else report.Add(ExpectationCodes.BehindEnd, part.From(close + 1).Trim().Place, $"{Shown.Quoted(part.From(close + 1).Trim().Text)} stands behind the C# value", "leave it out");
        return null;
    }
}
