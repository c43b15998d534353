using EolSequencer.Language.Diagnostics;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>
/// A text that is one of several words may only be compared with one of them: <c>vehicle.drive == "adw"</c> would never be
/// true and nobody would notice.
/// </summary>
internal static class WordCheck
{
    public static void Check(Draft draft)
    {
        foreach (var node in draft.Syntax.DescendantNodesAndSelf())
        {
            switch (node)
            {
                case BinaryExpressionSyntax comparison when comparison.Kind() is SyntaxKind.EqualsExpression or SyntaxKind.NotEqualsExpression:
                    Compare(comparison.Left, comparison.Right, draft);
                    break;
                case IsPatternExpressionSyntax pattern when Words(pattern.Expression, draft) is { } words:
                    foreach (var constant in pattern.Pattern.DescendantNodesAndSelf().OfType<ConstantPatternSyntax>())
                    {
                        CheckWritten(constant.Expression, words, pattern.Expression, draft);
                    }

                    break;
            }
        }
    }

    private static void Compare(ExpressionSyntax left, ExpressionSyntax right, Draft draft)
    {
        var (leftWords, rightWords) = (Words(left, draft), Words(right, draft));
        if (leftWords is not null && rightWords is not null)
        {
            if (leftWords.Intersect(rightWords).Any()) return;
            draft.Fault(ExpressionCodes.NeverEqual, right.Span,
                $"'{Bare(left)}' is {Shown.OneOf(leftWords)}, '{Bare(right)}' is {Shown.OneOf(rightWords)}: they are never equal");
        }
        else if (leftWords is not null) CheckWritten(right, leftWords, left, draft);
        else if (rightWords is not null) CheckWritten(left, rightWords, right, draft);
    }

    private static void CheckWritten(ExpressionSyntax written, IReadOnlyList<string> words, ExpressionSyntax compared, Draft draft)
    {
        if (Bare(written) is not LiteralExpressionSyntax literal || !literal.IsKind(SyntaxKind.StringLiteralExpression)) return;
        var text = literal.Token.ValueText;
        if (words.Contains(text)) return;
        var near = Nearest.Of(text, words);
        draft.Fault(ExpressionCodes.NeverEqual, literal.Span, $"'{Bare(compared)}' is {Shown.OneOf(words)}, never '{text}'",
            near is null ? null : $"did you mean \"{near}\"?");
    }

    private static IReadOnlyList<string>? Words(ExpressionSyntax expression, Draft draft) =>
        draft.ReadAt(Bare(expression)) is { Choices: { IsEmpty: false } choices } ? choices : null;

    private static ExpressionSyntax Bare(ExpressionSyntax expression)
    {
        while (expression is ParenthesizedExpressionSyntax brackets) expression = brackets.Expression;
        return expression;
    }
}
