using EolSequencer.Language.Expressions.Compiling;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace EolSequencer.Language.Scratch;

/// <summary>A line as it was typed, made ready to compile: numbers with a point are decimals as in sequences, and functions mind the stack.</summary>
internal static class ScratchLine
{
    private static readonly CSharpParseOptions Script = new(kind: SourceCodeKind.Script);

    /// <summary>The code, and what of it stands for which characters of the line.</summary>
    public static (string Code, TextEdits Edits) Of(string line)
    {
        var edits = new TextEdits(line, line.Length);
        var root = CSharpSyntaxTree.ParseText(line, Script).GetRoot();
        foreach (var token in root.DescendantTokens().Where(IsPlainFraction)) edits.Replace(token.Span.End, token.Span.End, "m", token.SpanStart, token.Span.End);
        foreach (var node in root.DescendantNodes()) Guard(node, edits);
        return (edits.Apply(), edits);
    }

    private static bool IsPlainFraction(SyntaxToken token) =>
        token.IsKind(SyntaxKind.NumericLiteralToken) && token.Value is double && !token.IsMissing && token.Text.AsSpan().IndexOfAny("eEdD") < 0;

    // A function that calls itself without an end would take the process with it; this makes it an exception of the line.
    private static void Guard(SyntaxNode node, TextEdits edits)
    {
        switch (node)
        {
            case MethodDeclarationSyntax { ExpressionBody: { } arrow } method: Open(arrow, method.SemicolonToken, IsPlain(method.ReturnType, method.Modifiers), edits); break;
            case LocalFunctionStatementSyntax { ExpressionBody: { } arrow } local: Open(arrow, local.SemicolonToken, IsPlain(local.ReturnType, local.Modifiers), edits); break;
            case BlockSyntax { Parent: MethodDeclarationSyntax or LocalFunctionStatementSyntax or AnonymousFunctionExpressionSyntax or AccessorDeclarationSyntax } body when !body.OpenBraceToken.IsMissing:
                edits.Replace(body.OpenBraceToken.Span.End, body.OpenBraceToken.Span.End, Check);
                break;
        }
    }

    private const string Check = "System.Runtime.CompilerServices.RuntimeHelpers.EnsureSufficientExecutionStack();";

    /// <summary>Whether a body behind an arrow returns its value; null: it is left as it is.</summary>
    private static bool? IsPlain(TypeSyntax type, SyntaxTokenList modifiers) =>
        type is RefTypeSyntax || modifiers.Any(SyntaxKind.AsyncKeyword) ? null : type is not PredefinedTypeSyntax { Keyword.RawKind: (int)SyntaxKind.VoidKeyword };

    private static void Open(ArrowExpressionClauseSyntax arrow, SyntaxToken semicolon, bool? returns, TextEdits edits)
    {
        if (returns is not { } isValue || semicolon.IsMissing) return;
        edits.Replace(arrow.ArrowToken.SpanStart, arrow.ArrowToken.Span.End, $"{{{Check}{(isValue && arrow.Expression is not ThrowExpressionSyntax ? "return" : "")}");
        edits.Replace(semicolon.SpanStart, semicolon.Span.End, ";}");
    }
}
