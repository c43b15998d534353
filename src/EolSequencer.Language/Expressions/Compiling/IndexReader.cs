using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Expressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Text;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>Reads what stands in square brackets: a written value, a loop name or a parameter, checked against the values there are.</summary>
internal sealed class IndexReader(Draft draft)
{
    /// <summary>One index behind what has been understood of a path.</summary>
    /// <param name="values">The values there are; empty: what the path names has no index.</param>
    /// <param name="what">What the path names, for messages.</param>
    /// <param name="index">Null when there is none.</param>
    /// <returns>False when a fault has been reported.</returns>
    public bool TryOne(PathSyntax path, IReadOnlyCollection<string> values, string what, out IndexUse? index)
    {
        index = null;
        if (path.Next is not PathLink.Index link)
        {
            if (values.Count == 0) return true;
            draft.Fault(ExpressionCodes.IndexNeeded, path.TakenSpan, $"{what} has an index: {Shown.OneOf([.. values])}",
                $"write  {path.TakenText}[\"{values.First()}\"]  or a loop name in the brackets");
            return false;
        }

        if (values.Count == 0)
        {
            draft.Fault(ExpressionCodes.IndexNotPossible, BracketsOf(link), $"{what} has no index");
            return false;
        }

        if (link.Arguments.Count != 1)
        {
            draft.Fault(ExpressionCodes.UnknownIndex, BracketsOf(link), $"{what} has one index, not {link.Arguments.Count}");
            return false;
        }

        index = Read(link.Arguments[0].Expression, values, what);
        if (index is null) return false;
        path.Take();
        return true;
    }

    /// <summary>A written value or a name, or null when a fault has been reported.</summary>
    public IndexUse? Read(ExpressionSyntax syntax, IReadOnlyCollection<string> values, string what)
    {
        switch (syntax)
        {
            case LiteralExpressionSyntax literal when literal.IsKind(SyntaxKind.StringLiteralExpression):
                var text = literal.Token.ValueText;
                return Check(text, literal.Span, $"{what} has no '{text}'", values) ? new IndexUse.Fixed(text) : null;

            case IdentifierNameSyntax { Identifier: var name }:
                return Named(name, values, what);

            default:
                draft.Fault(ExpressionCodes.UnknownIndex, syntax.Span,
                    "an index is a value in double quotes, a loop name or a parameter", $"one of {Shown.OneOf([.. values])}");
                return null;
        }
    }

    private IndexUse.Named? Named(SyntaxToken name, IReadOnlyCollection<string> values, string what)
    {
        var arguments = draft.Source.Names.Arguments;
        if (!arguments.TryGetValue(name.ValueText, out var shape))
        {
            var advice = values.Contains(name.ValueText) ? $"write  [\"{name.ValueText}\"]"
                : Nearest.Of(name.ValueText, arguments.Keys.Concat(values)) is { } near ? $"did you mean '{near}'?"
                : $"one of {Shown.OneOf([.. values])}";
            draft.Fault(ExpressionCodes.UnknownName, name.Span, $"'{name.ValueText}' is no loop name or parameter here", advice);
            return null;
        }

        if (shape.Choices.IsEmpty)
        {
            draft.Fault(ExpressionCodes.UnknownIndex, name.Span, $"'{name.ValueText}' is {shape}, so it may be something that {what} does not have",
                $"only a name with a list of values may stand here: {Shown.OneOf([.. values])}");
            return null;
        }

        foreach (var choice in shape.Choices)
        {
            if (!Check(choice, name.Span, $"'{name.ValueText}' can be '{choice}', which {what} does not have", values)) return null;
        }

        return new IndexUse.Named(name.ValueText);
    }

    private bool Check(string value, TextSpan span, string found, IReadOnlyCollection<string> values)
    {
        if (values.Contains(value)) return true;
        var advice = Nearest.Of(value, values) is { } near ? $"did you mean '{near}'?" : $"there is {Shown.OneOf([.. values])}";
        draft.Fault(ExpressionCodes.UnknownIndex, span, found, advice);
        return false;
    }

    /// <summary>The brackets of an index with what stands in them.</summary>
    public static TextSpan BracketsOf(PathLink.Index link) => ((ElementAccessExpressionSyntax)link.Whole).ArgumentList.Span;
}
