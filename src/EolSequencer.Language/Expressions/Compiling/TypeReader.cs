using EolSequencer.Model.Units;
using EolSequencer.Model.Values;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>
/// Reads the type of most expressions off the text, once every name in it has been read. Asking the compiler for the types
/// of two hundred expressions takes longer than compiling them. What it says holds if the code compiles at all.
/// </summary>
internal sealed class TypeReader(Draft draft)
{
    private static readonly AuthorType Number = new(ValueKind.Number);
    private static readonly AuthorType Whole = new(ValueKind.Number, IsWhole: true);
    private static readonly AuthorType Text = new(ValueKind.Text);
    private static readonly AuthorType Truth = new(ValueKind.Truth);

    private readonly Dictionary<ExpressionSyntax, AuthorType?> _known = [];

    /// <summary>The type, or null when only the compiler can say.</summary>
    public AuthorType? Of(ExpressionSyntax expression)
    {
        if (!_known.TryGetValue(expression, out var type)) _known[expression] = type = Read(expression);
        return type;
    }

    // Recursive to the depth of the expression, which the parser has bounded.
    private AuthorType? Read(ExpressionSyntax expression)
    {
        if (draft.ReadAt(expression) is { } read) return new AuthorType(read.Kind == ValueKind.Time ? ValueKind.Number : read.Kind, read.Unit?.Dimension);
        return expression switch
        {
            ParenthesizedExpressionSyntax brackets => Of(brackets.Expression),
            LiteralExpressionSyntax literal => Literal(literal.Token.Value),
            InterpolatedStringExpressionSyntax => Text,
            IsPatternExpressionSyntax => Truth,
            PrefixUnaryExpressionSyntax unary => unary.IsKind(SyntaxKind.LogicalNotExpression) ? Truth : Of(unary.Operand),
            ConditionalExpressionSyntax choice => Common(Of(choice.WhenTrue), Of(choice.WhenFalse)),
            BinaryExpressionSyntax binary => Binary(binary),
            InvocationExpressionSyntax call => Call(call),
            MemberAccessExpressionSyntax member => Member(member.Name.Identifier.ValueText, Of(member.Expression)),
            _ => null,
        };
    }

    private static AuthorType? Literal(object? value) => value switch
    {
        string => Text,
        bool => Truth,
        int or uint or long or ulong => Whole,
        double or decimal => Number,
        _ => null,
    };

    private AuthorType? Binary(BinaryExpressionSyntax binary)
    {
        var (left, right) = (Of(binary.Left), Of(binary.Right));
        return binary.Kind() switch
        {
            SyntaxKind.AddExpression or SyntaxKind.SubtractExpression or SyntaxKind.ModuloExpression => Common(left, right),
            SyntaxKind.MultiplyExpression => Scaled(left, right) ?? Scaled(right, left),
            SyntaxKind.DivideExpression => left is { IsQuantity: true } && left == right ? Number : Scaled(left, right),
            _ => Truth,
        };
    }

    /// <summary>The type of a value times or divided by a bare number.</summary>
    private static AuthorType? Scaled(AuthorType? value, AuthorType? factor) =>
        factor is { IsBareNumber: true } ? value is { IsBareNumber: true } ? Common(value, factor) : value is { IsQuantity: true } ? value : null : null;

    private static AuthorType? Common(AuthorType? one, AuthorType? other) =>
        one is null || other is null ? null
        : one == other ? one
        : one.IsBareNumber && other.IsBareNumber ? Number
        : null;

    private AuthorType? Call(InvocationExpressionSyntax call)
    {
        if (call.Expression is IdentifierNameSyntax { Identifier.ValueText: var function })
        {
            if (FunctionTable.ResultOf(function) is { } result) return result == typeof(bool) ? Truth : Number;
            var arguments = call.ArgumentList.Arguments.Select(argument => Of(argument.Expression)).ToList();
            var common = arguments.Count == 0 ? null : arguments.Aggregate(Common);
            return common is { IsBareNumber: true } ? Number : common is { IsQuantity: true } ? common : null;
        }

        return call.Expression is MemberAccessExpressionSyntax { Name.Identifier.ValueText: var method } ? Member(method, Text) : null;
    }

    private static AuthorType? Member(string name, AuthorType? owner) => name switch
    {
        "Length" or "Count" => Whole,
        "Trim" or "Substring" => Text,
        "Contains" => Truth,
        _ => owner?.Dimension is { } dimension && UnitTable.Of(dimension).Any(unit => unit.ExpressionName == name) ? Number : null,
    };
}
