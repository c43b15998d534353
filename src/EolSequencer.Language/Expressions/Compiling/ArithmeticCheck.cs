using EolSequencer.Model.Values;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>Finds arithmetic that C# allows and a test engineer does not expect.</summary>
internal static class ArithmeticCheck
{
    public static void Check(Draft draft, TypeReader types)
    {
        foreach (var binary in draft.Syntax.DescendantNodesAndSelf().OfType<BinaryExpressionSyntax>())
        {
            var (left, right) = (types.Of(binary.Left), types.Of(binary.Right));
            switch (binary.Kind())
            {
                case SyntaxKind.DivideExpression or SyntaxKind.ModuloExpression when IsZero(binary.Right):
                    draft.Fault(ExpressionCodes.WrongOperands, binary.Span, "division by zero", "the result would not be finite");
                    break;
                case SyntaxKind.DivideExpression when left is { IsWhole: true } && right is { IsWhole: true }:
                    draft.Fault(ExpressionCodes.WholeDivision, binary.Span, "two whole numbers are divided, so C# drops the fraction: 7 / 2 is 3");
                    break;
                case SyntaxKind.AddExpression when left is { Kind: ValueKind.Text } != right is { Kind: ValueKind.Text }:
                    draft.Fault(ExpressionCodes.TextAndOther, binary.Span, "a text and something else are put together with +");
                    break;
            }
        }
    }

    private static bool IsZero(ExpressionSyntax expression)
    {
        while (expression is ParenthesizedExpressionSyntax brackets) expression = brackets.Expression;
        return expression is LiteralExpressionSyntax { Token.Value: 0 or 0.0 or 0m };
    }
}
