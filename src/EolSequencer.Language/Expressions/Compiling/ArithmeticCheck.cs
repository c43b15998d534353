using EolSequencer.Model.Values;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>Finds arithmetic that C# allows and a test engineer does not expect. Needs no types: every name has been read.</summary>
internal static class ArithmeticCheck
{
    private enum Sort
    {
        /// <summary>A whole number of C#, which drops the fraction of a division.</summary>
        Whole,
        Text,
        Other,
    }

    public static void Check(Draft draft)
    {
        foreach (var binary in draft.Syntax.DescendantNodesAndSelf().OfType<BinaryExpressionSyntax>())
        {
            switch (binary.Kind())
            {
                case SyntaxKind.DivideExpression or SyntaxKind.ModuloExpression when IsZero(binary.Right):
                    draft.Fault(ExpressionCodes.WrongOperands, binary.Span, "division by zero", "the result would not be finite");
                    break;
                case SyntaxKind.DivideExpression when SortOf(binary.Left, draft) == Sort.Whole && SortOf(binary.Right, draft) == Sort.Whole:
                    draft.Fault(ExpressionCodes.WholeDivision, binary.Span, "two whole numbers are divided, so C# drops the fraction: 7 / 2 is 3");
                    break;
                case SyntaxKind.AddExpression when SortOf(binary.Left, draft) == Sort.Text != (SortOf(binary.Right, draft) == Sort.Text):
                    draft.Fault(ExpressionCodes.TextAndOther, binary.Span, "a text and something else are put together with +");
                    break;
            }
        }
    }

    private static bool IsZero(ExpressionSyntax expression) =>
        Bare(expression) is LiteralExpressionSyntax { Token.Value: 0 or 0.0 or 0m };

    // Recursive to the depth of the expression, which the parser has bounded.
    private static Sort SortOf(ExpressionSyntax expression, Draft draft)
    {
        expression = Bare(expression);
        if (draft.ReadAt(expression) is { } read) return read.Kind == ValueKind.Text ? Sort.Text : Sort.Other;
        return expression switch
        {
            InterpolatedStringExpressionSyntax => Sort.Text,
            LiteralExpressionSyntax literal => literal.Token.Value switch
            {
                string => Sort.Text,
                int or uint or long or ulong => Sort.Whole,
                _ => Sort.Other,
            },
            PrefixUnaryExpressionSyntax unary => SortOf(unary.Operand, draft),
            ConditionalExpressionSyntax choice => Both(choice.WhenTrue, choice.WhenFalse, draft),
            BinaryExpressionSyntax binary => binary.Kind() switch
            {
                SyntaxKind.AddExpression or SyntaxKind.SubtractExpression or SyntaxKind.MultiplyExpression
                    or SyntaxKind.DivideExpression or SyntaxKind.ModuloExpression => Both(binary.Left, binary.Right, draft),
                _ => Sort.Other,
            },
            MemberAccessExpressionSyntax { Name.Identifier.ValueText: "Length" or "Count" } => Sort.Whole,
            InvocationExpressionSyntax { Expression: MemberAccessExpressionSyntax { Name.Identifier.ValueText: "Trim" or "Substring" } } => Sort.Text,
            _ => Sort.Other,
        };
    }

    private static Sort Both(ExpressionSyntax one, ExpressionSyntax other, Draft draft)
    {
        var (first, second) = (SortOf(one, draft), SortOf(other, draft));
        return first == second ? first : first == Sort.Text || second == Sort.Text ? Sort.Text : Sort.Other;
    }

    private static ExpressionSyntax Bare(ExpressionSyntax expression)
    {
        while (expression is ParenthesizedExpressionSyntax brackets) expression = brackets.Expression;
        return expression;
    }
}
