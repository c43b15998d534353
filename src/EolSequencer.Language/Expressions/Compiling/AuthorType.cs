using EolSequencer.Language.Expressions.Support;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;
using Microsoft.CodeAnalysis;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>The C# type of an expression as its author thinks of it.</summary>
/// <param name="Kind">Number, text, truth or list.</param>
/// <param name="Dimension">The dimension of a quantity; null for a bare number and all else.</param>
/// <param name="IsWhole">True for what C# takes as a whole number and divides without a fraction.</param>
internal sealed record AuthorType(ValueKind Kind, Dimension? Dimension = null, bool IsWhole = false)
{
    public bool IsQuantity => Dimension is not null;

    public bool IsBareNumber => Kind == ValueKind.Number && Dimension is null;

    /// <summary>Null for what no author writes on purpose.</summary>
    public static AuthorType? Of(ITypeSymbol? type) => type switch
    {
        null => null,
        { SpecialType: SpecialType.System_Boolean } => new AuthorType(ValueKind.Truth),
        { SpecialType: SpecialType.System_String } => new AuthorType(ValueKind.Text),
        { SpecialType: SpecialType.System_Decimal } => new AuthorType(ValueKind.Number),
        { Name: nameof(TextList) } => new AuthorType(ValueKind.List),
        { SpecialType: SpecialType.System_Int32 or SpecialType.System_UInt32 or SpecialType.System_Int64 or SpecialType.System_UInt64 } =>
            new AuthorType(ValueKind.Number, IsWhole: true),
        _ => Enum.TryParse<Dimension>(type.Name, out var dimension) ? new AuthorType(ValueKind.Number, dimension) : null,
    };

    /// <summary>As a message names it, with its article.</summary>
    public override string ToString() => this switch
    {
        { Dimension: { } dimension } => $"a {dimension.Word()}",
        { Kind: ValueKind.Truth } => "yes or no",
        { Kind: ValueKind.List } => "a list",
        { Kind: ValueKind.Text } => "a text",
        _ => "a bare number",
    };
}
