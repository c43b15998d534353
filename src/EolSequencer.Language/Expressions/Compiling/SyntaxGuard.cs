using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>
/// The constructs that an expression may be made of. Everything that is not named here is refused: whatever makes
/// objects, declares, loops, waits, converts, assigns or looks at types.
/// </summary>
internal static class SyntaxGuard
{
    /// <summary>Reports every construct that is not allowed; true when there is none.</summary>
    public static bool Accept(Draft draft)
    {
        if (HasDirective(draft.Source.Text))
        {
            draft.Fault(ExpressionCodes.NotAllowed, draft.Syntax.Span, "lines beginning with # have no place in an expression");
            return false;
        }

        Visit(draft.Syntax, draft);
        return !draft.HasFailed;
    }

    // The compiler does not count one behind the expression as part of it.
    private static bool HasDirective(string text)
    {
        foreach (var line in text.AsSpan().EnumerateLines())
        {
            if (line.TrimStart().StartsWith("#")) return true;
        }

        return false;
    }

    private static void Visit(SyntaxNode node, Draft draft)
    {
        if (Objection(node) is { } objection)
        {
            draft.Fault(objection.Code, objection.At ?? node.Span, objection.Found, objection.Hint);
            return;
        }

        foreach (var child in node.ChildNodes()) Visit(child, draft);
    }

    private static Objection? Objection(SyntaxNode node) => node switch
    {
        IdentifierNameSyntax or ParenthesizedExpressionSyntax or BracketedArgumentListSyntax or ArgumentListSyntax => null,
        ConditionalExpressionSyntax or InvocationExpressionSyntax or ElementAccessExpressionSyntax => null,
        UnaryPatternSyntax or ParenthesizedPatternSyntax or BinaryPatternSyntax => null,
        ConstantPatternSyntax constant => Pattern(constant.Expression),
        RelationalPatternSyntax relational => Pattern(relational.Expression),
        InterpolatedStringExpressionSyntax or InterpolatedStringTextSyntax => null,
        IsPatternExpressionSyntax => null,
        MemberAccessExpressionSyntax { RawKind: (int)SyntaxKind.SimpleMemberAccessExpression } => null,
        ArgumentSyntax argument => Of(argument),
        LiteralExpressionSyntax literal => Of(literal),
        PrefixUnaryExpressionSyntax unary => Of(unary),
        BinaryExpressionSyntax binary => Of(binary),
        InterpolationSyntax hole => Of(hole),
        InterpolationFormatClauseSyntax => null,
        AssignmentExpressionSyntax assignment => No(assignment.OperatorToken, "an expression assigns nothing", "compare with =="),
        PostfixUnaryExpressionSyntax postfix => No(postfix.OperatorToken, "an expression changes nothing"),
        CastExpressionSyntax => No("there are no casts in expressions", "every number is a decimal; floor, ceiling and round make it whole"),
        AnonymousFunctionExpressionSyntax => No("an expression holds no functions"),
        ConditionalAccessExpressionSyntax => No("?. is not needed: nothing is null", "a result that may be missing has .or(…)"),
        BaseObjectCreationExpressionSyntax or ArrayCreationExpressionSyntax or ImplicitArrayCreationExpressionSyntax
            or StackAllocArrayCreationExpressionSyntax or CollectionExpressionSyntax or TupleExpressionSyntax
            or AnonymousObjectCreationExpressionSyntax => No("an expression makes no objects"),
        TypeOfExpressionSyntax or SizeOfExpressionSyntax or DefaultExpressionSyntax or TypeSyntax => No("types have no place in an expression"),
        CheckedExpressionSyntax => No("overflow is always an error"),
        SwitchExpressionSyntax => No("a switch has no place in an expression", "write  condition ? one : other"),
        _ => No("this has no place in an expression"),
    };

    private static Objection? Pattern(ExpressionSyntax wanted) =>
        wanted is LiteralExpressionSyntax or PrefixUnaryExpressionSyntax { Operand: LiteralExpressionSyntax }
            ? null
            : No(wanted.GetFirstToken(), "behind 'is' stands a written value", "compare names with ==");

    private static Objection? Of(ArgumentSyntax argument) =>
        argument.NameColon is not null || !argument.RefKindKeyword.IsKind(SyntaxKind.None) ? No("arguments are plain values") : null;

    private static Objection? Of(LiteralExpressionSyntax literal) => literal.Kind() switch
    {
        SyntaxKind.StringLiteralExpression or SyntaxKind.NumericLiteralExpression
            or SyntaxKind.TrueLiteralExpression or SyntaxKind.FalseLiteralExpression => null,
        SyntaxKind.NullLiteralExpression => No("nothing is null here", "a result that may be missing has .or(…)"),
        SyntaxKind.CharacterLiteralExpression => No("a text stands in double quotes", $"write \"{literal.Token.ValueText}\""),
        _ => No("this has no place in an expression"),
    };

    private static Objection? Of(PrefixUnaryExpressionSyntax unary) => unary.Kind() switch
    {
        SyntaxKind.LogicalNotExpression or SyntaxKind.UnaryMinusExpression or SyntaxKind.UnaryPlusExpression => null,
        SyntaxKind.BitwiseNotExpression => No(unary.OperatorToken, "bits of a value are not combined", "write ! for not"),
        _ => No(unary.OperatorToken, $"'{unary.OperatorToken.Text}' has no place in an expression"),
    };

    private static Objection? Of(BinaryExpressionSyntax binary) => binary.Kind() switch
    {
        SyntaxKind.AddExpression or SyntaxKind.SubtractExpression or SyntaxKind.MultiplyExpression
            or SyntaxKind.DivideExpression or SyntaxKind.ModuloExpression
            or SyntaxKind.EqualsExpression or SyntaxKind.NotEqualsExpression
            or SyntaxKind.LessThanExpression or SyntaxKind.LessThanOrEqualExpression
            or SyntaxKind.GreaterThanExpression or SyntaxKind.GreaterThanOrEqualExpression
            or SyntaxKind.LogicalAndExpression or SyntaxKind.LogicalOrExpression => null,
        SyntaxKind.ExclusiveOrExpression => new Objection(ExpressionCodes.CaretIsNoPower, binary.OperatorToken.Span,
            "in C# ^ combines bits: 2 ^ 3 is 1", "write pow(x, 2) for a power, a != b for either-or"),
        SyntaxKind.BitwiseAndExpression => No(binary.OperatorToken, "bits of a value are not combined", "write && for and"),
        SyntaxKind.BitwiseOrExpression => No(binary.OperatorToken, "bits of a value are not combined", "write || for or"),
        SyntaxKind.CoalesceExpression => No(binary.OperatorToken, "nothing is null here", "a result that may be missing has .or(…)"),
        SyntaxKind.IsExpression => No(binary.Right.GetFirstToken(), "behind 'is' stands a written value", "compare names with =="),
        _ => No(binary.OperatorToken, $"'{binary.OperatorToken.Text}' has no place in an expression"),
    };

    private static Objection? Of(InterpolationSyntax hole)
    {
        if (hole.AlignmentClause is { } alignment)
        {
            return new Objection(ExpressionCodes.TextFormat, alignment.Span, "there is no alignment in expressions", "write {x} or {x:0.00}");
        }

        var format = hole.FormatClause?.FormatStringToken;
        return format is null || NumberFormat.IsAllowed(format.Value.ValueText)
            ? null
            : new Objection(ExpressionCodes.TextFormat, format.Value.Span, $"'{format.Value.ValueText}' is no format for a number here", null);
    }

    private static Objection No(string found, string? hint = null) => new(ExpressionCodes.NotAllowed, null, found, hint);

    private static Objection No(SyntaxToken at, string found, string? hint = null) => new(ExpressionCodes.NotAllowed, at.Span, found, hint);
}
