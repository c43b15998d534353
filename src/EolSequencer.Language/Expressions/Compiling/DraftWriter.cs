using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Values;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>Walks an author's expression and writes what the compiler is given in its place.</summary>
internal sealed class DraftWriter
{
    private const string Edges = "edges";

    private readonly Draft _draft;
    private readonly PathResolver _paths;
    private readonly HashSet<SyntaxNode> _resolved = [];

    private DraftWriter(Draft draft, ComputedShapes shapes)
    {
        _draft = draft;
        _paths = new PathResolver(draft, shapes);
    }

    /// <summary>Writes the expression; the draft says whether that failed or has to wait.</summary>
    public static void Write(Draft draft, ComputedShapes shapes)
    {
        new DraftWriter(draft, shapes).Visit(draft.Syntax);
        if (draft.IsPostponed) return;
        WordCheck.Check(draft);
        var types = new TypeReader(draft);
        ArithmeticCheck.Check(draft, types);
        if (!draft.HasFailed) draft.Finish(types.Of(draft.Syntax));
        if (draft is { HasFailed: false, NeedsTypes: false }) Settle(draft);
    }

    private static void Settle(Draft draft)
    {
        if (draft.Type is null) draft.Settle(ValueShape.Truth);
        else if (ShapeCheck.Of(draft, draft.Type) is { } shape) draft.Settle(shape);
    }

    private void Visit(SyntaxNode node)
    {
        if (_resolved.Contains(node)) return;
        switch (node)
        {
            case InvocationExpressionSyntax { Expression: IdentifierNameSyntax { Identifier.ValueText: Edges } } call:
                CountEdges(call);
                return;
            case InvocationExpressionSyntax { Expression: IdentifierNameSyntax function } call:
                CheckFunction(function);
                Visit(call.ArgumentList);
                return;
            case MemberAccessExpressionSyntax access:
                Visit(access.Expression); // behind a point stands no name of its own
                if (_resolved.Contains(access.Name)) return;
                _draft.AskForTypes();
                _draft.IsInexact |= _draft.NamesTrace && TraceFeatures.IsInexact(access.Name.Identifier.ValueText);
                return;
            case ElementAccessExpressionSyntax element:
                Visit(element.Expression);
                if (_resolved.Contains(element.ArgumentList)) return;
                _draft.AskForTypes();
                Visit(element.ArgumentList);
                return;
            case IdentifierNameSyntax root:
                Resolve(PathSyntax.Of(root));
                return;
            case LiteralExpressionSyntax literal when literal.IsKind(SyntaxKind.NumericLiteralExpression):
                NumberLiteral.Rewrite(literal, _draft);
                return;
            case InterpolatedStringExpressionSyntax text:
                _draft.Edits.Replace(text.SpanStart, text.SpanStart, "InvariantText.Of(", text.SpanStart, text.Span.End);
                VisitChildren(text);
                _draft.Edits.Replace(text.Span.End, text.Span.End, ")", text.SpanStart, text.Span.End);
                return;
            default:
                VisitChildren(node);
                return;
        }
    }

    private void VisitChildren(SyntaxNode node)
    {
        foreach (var child in node.ChildNodes()) Visit(child);
    }

    private void Resolve(PathSyntax path)
    {
        var hasFailed = _draft.HasFailed;
        _paths.Resolve(path);

        // Brackets that belong to the resolved part have been read with it; behind an unknown name they mean nothing.
        var isUnknown = _draft.HasFailed && !hasFailed;
        for (SyntaxNode at = path.Root; isUnknown ? at is ExpressionSyntax : at != path.Taken; at = at.Parent!)
        {
            if (at.Parent is ElementAccessExpressionSyntax element && element.Expression == at) _resolved.Add(element.ArgumentList);
            if (at.Parent is MemberAccessExpressionSyntax access && access.Expression == at) _resolved.Add(access.Name);
        }
    }

    private void CountEdges(InvocationExpressionSyntax call)
    {
        if (call.ArgumentList.Arguments is not [{ Expression: var argument }] || RootOf(argument) is not { } root)
        {
            _draft.Fault(ExpressionCodes.WrongOperands, call.Span, "edges counts the changes of one yes-no channel", "write  edges(bus.wiper_parked)");
            return;
        }

        if (_draft.Source.Wanted is not Wanted.One { Shape.Kind: ValueKind.Truth })
        {
            _draft.Fault(ExpressionCodes.NotAllowed, call.Span, "edges counts while a step waits", "use it in a condition: until, await, since, require");
            return;
        }

        if (_paths.TruthChannel(PathSyntax.Of(root)) is not { } slot) return;
        _draft.Edits.Replace(call.SpanStart, call.Span.End, $"((decimal){CodeText.Scope}.Edges({slot}))");
    }

    private static IdentifierNameSyntax? RootOf(ExpressionSyntax expression) => expression switch
    {
        IdentifierNameSyntax root => root,
        MemberAccessExpressionSyntax access => RootOf(access.Expression),
        ElementAccessExpressionSyntax element => RootOf(element.Expression),
        _ => null,
    };

    private void CheckFunction(IdentifierNameSyntax function)
    {
        var name = function.Identifier.ValueText;
        if (FunctionTable.IsKnown(name))
        {
            _draft.IsInexact |= FunctionTable.IsInexact(name);
            return;
        }

        var near = Nearest.Of(name, FunctionTable.Names);
        _draft.Fault(ExpressionCodes.UnknownFunction, function.Span, $"there is no function '{name}'", near is null ? null : $"did you mean '{near}'?");
    }
}
