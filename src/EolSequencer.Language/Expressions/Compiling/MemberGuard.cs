using System.Collections.Frozen;
using EolSequencer.Language.Expressions.Support;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Text;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>
/// Lets an author reach the members of this list and no others, whatever their type: names have been resolved before, so
/// this holds for what is written behind them.
/// </summary>
internal sealed class MemberGuard(Draft draft, UnitFunction function, SemanticModel model)
{
    private static readonly FrozenSet<string> Members = new[]
    {
        "P:System.String.Length",
        "M:System.String.Contains(System.String)",
        "M:System.String.Substring(System.Int32)",
        "M:System.String.Substring(System.Int32,System.Int32)",
        "M:System.String.Trim",
        $"P:{typeof(TextList).FullName}.Count",
        $"M:{typeof(TextList).FullName}.Contains(System.String)",
    }.ToFrozenSet(StringComparer.Ordinal);

    /// <summary>Reports every member that is not allowed.</summary>
    public void Check(ExpressionSyntax expression)
    {
        foreach (var node in expression.DescendantNodesAndSelf())
        {
            switch (node)
            {
                case MemberAccessExpressionSyntax access when IsAuthors(access.Name.SpanStart):
                    CheckMember(access.Name);
                    break;
                case InvocationExpressionSyntax { Expression: IdentifierNameSyntax name } when IsAuthors(name.SpanStart):
                    CheckMember(name);
                    break;
                case ElementAccessExpressionSyntax element when IsAuthors(element.ArgumentList.SpanStart):
                    Fault(ExpressionCodes.IndexNotPossible, element.ArgumentList.Span, "only indexed channels, facts, steps and groups take an index", null);
                    break;
            }
        }
    }

    private void CheckMember(SimpleNameSyntax name)
    {
        // What the compiler cannot bind either, it reports itself.
        if (model.GetSymbolInfo(name).Symbol is not { } symbol || IsAllowed(symbol)) return;
        Fault(ExpressionCodes.NotAllowed, name.Span, $"'{name.Identifier.ValueText}' has no place in an expression", null);
    }

    private static bool IsAllowed(ISymbol symbol) =>
        symbol.ContainingType is { } type
        && (symbol is IMethodSymbol && type.Name == nameof(Functions) && type.ContainingNamespace.ToDisplayString() == typeof(Functions).Namespace
            || symbol is IPropertySymbol && type.TypeKind == TypeKind.Struct && type.Locations.Any(place => place.IsInSource)
            || TraceFeatures.IsTrace(type) && TraceFeatures.Has(type, symbol.Name)
            || Members.Contains(symbol.OriginalDefinition.GetDocumentationCommentId() ?? ""));

    private bool IsAuthors(int position) => draft.Edits.IsCopied(position - function.Start);

    private void Fault(Diagnostics.DiagnosticCode code, TextSpan span, string found, string? hint)
    {
        var (start, length) = draft.Edits.ToAuthor(span.Start - function.Start, span.Length);
        draft.Fault(code, new TextSpan(start, length), found, hint);
    }
}
