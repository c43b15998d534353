using System.Collections.Immutable;
using EolSequencer.Model.Units;

namespace EolSequencer.Model.Values;

/// <summary>What values a channel, fact, parameter or result can have.</summary>
/// <param name="Kind">Their kind.</param>
/// <param name="Unit">The unit of numbers; null for counts and for everything that is no number. Times have <c>s</c>.</param>
/// <param name="Choices">The only texts possible; empty when any text is.</param>
/// <param name="MaxLength">The longest text possible, in code units; null when nothing bounds it.</param>
public sealed record ValueShape(ValueKind Kind, Unit? Unit, ImmutableArray<string> Choices, int? MaxLength = null)
{
    public static ValueShape Truth { get; } = new(ValueKind.Truth, null, []);

    public static ValueShape List { get; } = new(ValueKind.List, null, []);

    public static ValueShape Time { get; } = new(ValueKind.Time, UnitTable.Second, []);

    /// <summary>A number without a unit.</summary>
    public static ValueShape Count { get; } = new(ValueKind.Number, null, []);

    public static ValueShape Number(Unit? unit) => new(ValueKind.Number, unit, []);

    public static ValueShape Text(int? maxLength = null) => new(ValueKind.Text, null, [], maxLength);

    public static ValueShape OneOf(params IEnumerable<string> choices) => new(ValueKind.Text, null, [.. choices]);

    public bool Equals(ValueShape? other) =>
        other is not null && Kind == other.Kind && Unit == other.Unit && MaxLength == other.MaxLength
        && Choices.AsSpan().SequenceEqual(other.Choices.AsSpan());

    public override int GetHashCode() => HashCode.Combine(Kind, Unit, MaxLength, Choices.Length);

    /// <summary>How a message names it: <c>number in km/h</c>, <c>count</c>, <c>one of steel, alloy</c>.</summary>
    public override string ToString() => Kind switch
    {
        ValueKind.Number => Unit is null ? "count" : $"number in {Unit}",
        ValueKind.Text when !Choices.IsEmpty => $"one of {string.Join(", ", Choices)}",
        ValueKind.Text => MaxLength is { } length ? $"text of up to {length} characters" : "text",
        ValueKind.Truth => "yes or no",
        ValueKind.List => "list",
        _ => "time",
    };
}
