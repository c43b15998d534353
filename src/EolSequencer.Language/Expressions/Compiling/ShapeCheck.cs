using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>What a value is, from the C# type of its expression, and whether its place takes that.</summary>
internal static class ShapeCheck
{
    /// <summary>The shape, or null when a fault has been reported.</summary>
    public static ValueShape? Of(Draft draft, AuthorType? type)
    {
        if (Natural(draft, type) is not { } shape)
        {
            draft.Fault(ExpressionCodes.WrongKind, draft.Syntax.Span, "this gives no value that can be used",
                "an expression gives a number, a text, a truth value or a list");
            return null;
        }

        return draft.Source.Wanted is Wanted.One { Shape: var wanted } ? Fit(draft, shape, wanted) : shape;
    }

    private static ValueShape? Natural(Draft draft, AuthorType? type) => type switch
    {
        null => null,
        { Dimension: { } dimension } => Quantity(draft, dimension),
        { Kind: ValueKind.Number } => ValueShape.Count,
        { Kind: ValueKind.Truth } => ValueShape.Truth,
        { Kind: ValueKind.List } => ValueShape.List,
        _ => Read(draft) ?? ValueShape.Text(),
    };

    private static ValueShape Quantity(Draft draft, Dimension dimension) =>
        ValueShape.Number(draft.Units.FirstOrDefault(unit => unit.Dimension == dimension) ?? UnitTable.Of(dimension)[0]);

    /// <summary>A text that is nothing but read keeps its words and its length.</summary>
    private static ValueShape? Read(Draft draft)
    {
        var syntax = draft.Syntax;
        while (syntax is ParenthesizedExpressionSyntax brackets) syntax = brackets.Expression;
        if (draft.ReadAt(syntax) is { } read) return read;
        return syntax is LiteralExpressionSyntax literal ? ValueShape.OneOf(literal.Token.ValueText) : null;
    }

    private static ValueShape? Fit(Draft draft, ValueShape shape, ValueShape wanted)
    {
        var fits = wanted.Kind switch
        {
            ValueKind.Number or ValueKind.Time => shape.Kind == ValueKind.Number && shape.Unit?.Dimension == wanted.Unit?.Dimension,
            _ => shape.Kind == wanted.Kind,
        };
        if (!fits)
        {
            draft.Fault(ExpressionCodes.WrongKind, draft.Syntax.Span, $"this gives {Described(shape)}, wanted is {Described(wanted)}", Advice(shape, wanted));
            return null;
        }

        if (wanted.Kind != ValueKind.Text) return wanted;
        if (wanted.Choices.IsEmpty) return shape;
        if (!shape.Choices.IsEmpty && shape.Choices.All(wanted.Choices.Contains)) return shape;
        draft.Fault(ExpressionCodes.WrongKind, draft.Syntax.Span, $"this gives {shape}, wanted is {wanted}", null);
        return null;
    }

    private static string Described(ValueShape shape) =>
        shape.Kind == ValueKind.Time ? "a time" : new AuthorType(shape.Kind, shape.Unit?.Dimension).ToString();

    private static string? Advice(ValueShape shape, ValueShape wanted) => (shape, wanted) switch
    {
        ({ Kind: ValueKind.Number, Unit: { } unit }, { Kind: ValueKind.Number, Unit: null }) => $"take its number with a unit: {UnitWords.Names(unit.Dimension)}",
        ({ Kind: ValueKind.Number, Unit: { } unit }, { Kind: ValueKind.Truth }) => $"compare it, for example  {UnitWords.Names(unit.Dimension).Split(',', ' ')[0]} >= 1",
        ({ Kind: ValueKind.Number }, { Kind: ValueKind.Truth }) => "compare it, for example  >= 1",
        _ => null,
    };
}
