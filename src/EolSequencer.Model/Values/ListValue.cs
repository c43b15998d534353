using System.Collections.Immutable;

namespace EolSequencer.Model.Values;

/// <summary>Texts in the order they came; equal when they are the same texts in the same order.</summary>
public sealed record ListValue(ImmutableArray<string> Items) : Value
{
    public override ValueKind Kind => ValueKind.List;

    public bool Equals(ListValue? other) => other is not null && Items.AsSpan().SequenceEqual(other.Items.AsSpan());

    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (var item in Items) hash.Add(item, StringComparer.Ordinal);
        return hash.ToHashCode();
    }

    /// <summary>The items in brackets: <c>[P0101, P0420]</c>.</summary>
    public override string ToString() => $"[{string.Join(", ", Items)}]";
}
