using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>Says in our words what the compiler found, where its own speak of types that an author has never seen.</summary>
internal static class CompilerWords
{
    private const string OperatorsDiffer = "CS0019";
    private const string OperatorAlone = "CS0023";
    private const string NoMember = "CS1061";
    private const string ConstantOverflow = "CS0220";

    /// <summary>The compiler's own words.</summary>
    public static string Of(Microsoft.CodeAnalysis.Diagnostic fault)
    {
        var words = fault.GetMessage(System.Globalization.CultureInfo.InvariantCulture).TrimEnd('.');
        return words.Length == 0 ? fault.Id : $"{words} ({fault.Id})";
    }

    /// <summary>Our words for a fault in the text of a unit.</summary>
    public static Objection Of(Microsoft.CodeAnalysis.Diagnostic fault, SyntaxNode root, SemanticModel model)
    {
        var node = root.FindNode(fault.Location.SourceSpan, getInnermostNodeForTie: true);
        return fault.Id switch
        {
            OperatorsDiffer when node.FirstAncestorOrSelf<BinaryExpressionSyntax>() is { } binary => Operands(binary, Type(binary.Left, model), Type(binary.Right, model)),
            OperatorAlone when node.FirstAncestorOrSelf<PrefixUnaryExpressionSyntax>() is { } unary => new Objection(ExpressionCodes.WrongOperands, null,
                $"'{unary.OperatorToken.Text}' does not fit {Named(Type(unary.Operand, model))}", null),
            NoMember when node.FirstAncestorOrSelf<MemberAccessExpressionSyntax>() is { } access && model.GetTypeInfo(access.Expression).Type is { } trace && TraceFeatures.IsTrace(trace) =>
                Feature(access.Name.Identifier.ValueText, trace),
            NoMember when node.FirstAncestorOrSelf<MemberAccessExpressionSyntax>() is { } access => Member(access.Name.Identifier.ValueText, Type(access.Expression, model)),
            ConstantOverflow => new Objection(ExpressionCodes.NumberForm, null, "the result is larger than a whole number can be", "write one of the numbers with a point, such as 2.0"),
            _ => new Objection(ExpressionCodes.Compiler, null, Of(fault), null),
        };
    }

    private static Objection Operands(BinaryExpressionSyntax binary, AuthorType? left, AuthorType? right)
    {
        var symbol = binary.OperatorToken.Text;
        var meet = $"{Named(left)} and {Named(right)} meet at '{symbol}'";
        if (left is null || right is null) return new Objection(ExpressionCodes.WrongOperands, null, meet, null);
        if (left.IsQuantity && right.IsQuantity)
        {
            return left == right
                ? new Objection(ExpressionCodes.WrongOperands, null, meet, $"take their numbers with a unit: {UnitWords.Names(left.Dimension!.Value)}")
                : new Objection(ExpressionCodes.DifferentDimensions, null, meet, null);
        }

        if ((left.Dimension ?? right.Dimension) is { } dimension && (left.IsBareNumber || right.IsBareNumber))
        {
            return new Objection(ExpressionCodes.UnitNeeded, null, meet, $"take the number with a unit: {UnitWords.Names(dimension)}");
        }

        var advice = left.Kind == ValueKind.Truth || right.Kind == ValueKind.Truth ? "a truth value stands alone, with ! in front for not"
            : left.IsBareNumber || right.IsBareNumber ? "write numbers without quotes"
            : null;
        return new Objection(ExpressionCodes.WrongOperands, null, meet, advice);
    }

    private static Objection Member(string name, AuthorType? type) => type switch
    {
        { Dimension: { } dimension } => new Objection(ExpressionCodes.UnknownUnit, null, $"'{name}' is no unit of {dimension.Word()}", UnitWords.Advice(name, dimension)),
        { IsBareNumber: true } => new Objection(ExpressionCodes.UnknownUnit, null, $"a bare number has no '{name}'", "leave the point and the name out"),
        _ => new Objection(ExpressionCodes.NotAllowed, null, $"{Named(type)} has no '{name}'", null),
    };

    private static Objection Feature(string name, ITypeSymbol trace)
    {
        var advice = TraceFeatures.WantsUnit(trace, name) ? $"take its numbers with a unit first, as in  .km_h.{name}"
            : Diagnostics.Nearest.Of(name, TraceFeatures.Names(trace)) is { } near ? $"did you mean '{near}'?"
            : $"there is {Diagnostics.Shown.OneOf([.. TraceFeatures.Names(trace)])}";
        return new Objection(ExpressionCodes.UnknownFeature, null, $"a trace has no '{name}' here", advice);
    }

    private static AuthorType? Type(ExpressionSyntax expression, SemanticModel model) => AuthorType.Of(model.GetTypeInfo(expression).Type);

    private static string Named(AuthorType? type) => type?.ToString() ?? "this";
}
