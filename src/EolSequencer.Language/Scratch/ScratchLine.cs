using EolSequencer.Language.Expressions.Compiling;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Scripting;

namespace EolSequencer.Language.Scratch;

/// <summary>A line as it was typed, made ready to compile: numbers with a point are decimals as in sequences, and functions mind the stack.</summary>
internal static class ScratchLine
{
    /// <summary>The code, and what of it stands for which characters of the line.</summary>
    /// <param name="before">What the line comes behind: some of its functions can be guarded only by who knows what they return.</param>
    public static (string Code, TextEdits Edits) Of(string line, Script before)
    {
        var edits = new TextEdits(line, line.Length);
        var compilation = before.ContinueWith<object>(line).GetCompilation();
        var tree = compilation.SyntaxTrees.Single();
        var root = tree.GetRoot();
        foreach (var token in root.DescendantTokens().Where(IsPlainFraction)) edits.Replace(token.Span.End, token.Span.End, "m", token.SpanStart, token.Span.End);
        foreach (var node in root.DescendantNodes()) ScratchGuard.Guard(node, compilation.GetSemanticModel(tree), edits);
        return (edits.Apply(), edits);
    }

    private static bool IsPlainFraction(SyntaxToken token) =>
        token.IsKind(SyntaxKind.NumericLiteralToken) && token.Value is double && !token.IsMissing && token.Text.AsSpan().IndexOfAny("eEdD") < 0;
}
