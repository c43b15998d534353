using EolSequencer.Language.Expressions.Compiling;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace EolSequencer.Language.Scratch;

/// <summary>Lets whatever can call itself mind the stack: without an end it would take the process with it, so it becomes an exception of the line.</summary>
internal static class ScratchGuard
{
    private const string Helpers = "System.Runtime.CompilerServices.RuntimeHelpers";
    private const string Check = $"{Helpers}.EnsureSufficientExecutionStack();";
    private const string BeforeValue = $"{Helpers}.TryEnsureSufficientExecutionStack()?(";
    private const string BehindValue = "):throw new System.InsufficientExecutionStackException()";

    /// <summary>Guards a node, if it is the body of something that can be called, or a value that is made with an object.</summary>
    /// <param name="model">Of the line as it was typed.</param>
    public static void Guard(SyntaxNode node, SemanticModel model, TextEdits edits)
    {
        switch (node)
        {
            case BlockSyntax { Parent: BaseMethodDeclarationSyntax or LocalFunctionStatementSyntax or AnonymousFunctionExpressionSyntax or AccessorDeclarationSyntax } body when !body.OpenBraceToken.IsMissing:
                edits.Replace(body.OpenBraceToken.Span.End, body.OpenBraceToken.Span.End, Check);
                break;
            case ArrowExpressionClauseSyntax arrow: Arrow(arrow, edits); break;
            case LambdaExpressionSyntax { ExpressionBody: { } body }: Lambda(body, model, edits); break;
            case EqualsValueClauseSyntax start when IsMadeWithObject(start):
                Value(start.Value, edits);
                break;
        }
    }

    private static bool IsMadeWithObject(EqualsValueClauseSyntax start) => start.Parent switch
    {
        PropertyDeclarationSyntax => true,
        VariableDeclaratorSyntax { Parent.Parent: FieldDeclarationSyntax { Parent: TypeDeclarationSyntax } field } => !field.Modifiers.Any(SyntaxKind.ConstKeyword),
        _ => false,
    };

    private static void Arrow(ArrowExpressionClauseSyntax arrow, TextEdits edits)
    {
        var (returns, modifiers, semicolon) = arrow.Parent switch
        {
            MethodDeclarationSyntax method => (method.ReturnType, method.Modifiers, method.SemicolonToken),
            LocalFunctionStatementSyntax local => (local.ReturnType, local.Modifiers, local.SemicolonToken),
            ConstructorDeclarationSyntax made => (null, made.Modifiers, made.SemicolonToken),
            AccessorDeclarationSyntax { RawKind: not (int)SyntaxKind.GetAccessorDeclaration } accessor => (null, accessor.Modifiers, accessor.SemicolonToken),
            _ => ((TypeSyntax?)null, default(SyntaxTokenList), default(SyntaxToken)),
        };
        if (semicolon.IsMissing) return;
        if (semicolon == default)
        {
            Value(arrow.Expression, edits); // of a property, an indexer, an operator
            return;
        }

        if (returns is RefTypeSyntax || modifiers.Any(SyntaxKind.AsyncKeyword)) return;
        var isValue = returns is not (null or PredefinedTypeSyntax { Keyword.RawKind: (int)SyntaxKind.VoidKeyword }) && arrow.Expression is not ThrowExpressionSyntax;
        edits.Replace(arrow.ArrowToken.SpanStart, arrow.ArrowToken.Span.End, $"{{{Check}{(isValue ? "return" : "")}");
        edits.Replace(semicolon.SpanStart, semicolon.Span.End, ";}");
    }

    private static void Lambda(ExpressionSyntax body, SemanticModel model, TextEdits edits)
    {
        if (model.GetTypeInfo(body).Type?.SpecialType != SpecialType.System_Void)
        {
            Value(body, edits);
            return;
        }

        edits.Replace(body.SpanStart, body.SpanStart, $"{{{Check}");
        edits.Replace(body.Span.End, body.Span.End, ";}");
    }

    private static void Value(ExpressionSyntax value, TextEdits edits)
    {
        if (value is ThrowExpressionSyntax or RefExpressionSyntax or AnonymousFunctionExpressionSyntax or InitializerExpressionSyntax or LiteralExpressionSyntax || value.IsMissing) return;
        edits.Replace(value.SpanStart, value.SpanStart, BeforeValue);
        edits.Replace(value.Span.End, value.Span.End, BehindValue);
    }
}
