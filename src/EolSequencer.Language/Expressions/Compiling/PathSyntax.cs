using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Text;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>A name with everything that hangs on it: <c>results.wheels["fl"].torque.or(0)</c>.</summary>
internal sealed class PathSyntax
{
    private readonly ImmutableArray<PathLink> _links;
    private int _next;

    private PathSyntax(IdentifierNameSyntax root, ImmutableArray<PathLink> links)
    {
        Root = root;
        _links = links;
        Taken = root;
    }

    public IdentifierNameSyntax Root { get; }

    /// <summary>The name at the root.</summary>
    public string First => Root.Identifier.ValueText;

    /// <summary>The part of the path that has been understood so far.</summary>
    public ExpressionSyntax Taken { get; private set; }

    /// <summary>From the root to the end of what has been understood.</summary>
    public TextSpan TakenSpan => TextSpan.FromBounds(Root.SpanStart, Taken.Span.End);

    public string TakenText => Taken.ToString();

    /// <summary>The link that comes next; null at the end.</summary>
    public PathLink? Next => _next < _links.Length ? _links[_next] : null;

    /// <summary>The name that comes next when the next link is a point and a name.</summary>
    public SyntaxToken? NextName => Next is PathLink.Member member ? member.Name : null;

    public static PathSyntax Of(IdentifierNameSyntax root)
    {
        var links = ImmutableArray.CreateBuilder<PathLink>();
        SyntaxNode at = root;
        while (LinkOn(at) is { } link)
        {
            links.Add(link);
            at = link.Whole;
        }

        return new PathSyntax(root, links.ToImmutable());
    }

    /// <summary>Goes one link on.</summary>
    public void Take()
    {
        Taken = _links[_next].Whole;
        _next++;
    }

    private static PathLink? LinkOn(SyntaxNode node) => node.Parent switch
    {
        MemberAccessExpressionSyntax access when access.Expression == node => new PathLink.Member(access, access.Name.Identifier),
        ElementAccessExpressionSyntax element when element.Expression == node => new PathLink.Index(element, element.ArgumentList.Arguments),
        InvocationExpressionSyntax call when call.Expression == node => new PathLink.Call(call, call.ArgumentList),
        _ => null,
    };
}

/// <summary>One thing that hangs on a name; <paramref name="Whole"/> reaches from the root to its end.</summary>
internal abstract record PathLink(ExpressionSyntax Whole)
{
    internal sealed record Member(ExpressionSyntax Whole, SyntaxToken Name) : PathLink(Whole);

    internal sealed record Index(ExpressionSyntax Whole, SeparatedSyntaxList<ArgumentSyntax> Arguments) : PathLink(Whole);

    internal sealed record Call(ExpressionSyntax Whole, ArgumentListSyntax Arguments) : PathLink(Whole);
}
