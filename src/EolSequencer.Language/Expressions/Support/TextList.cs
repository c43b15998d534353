using System.Collections.Immutable;

namespace EolSequencer.Language.Expressions.Support;

/// <summary>A list of texts, as far as expressions may look into it.</summary>
public readonly struct TextList(ImmutableArray<string> items)
{
    /// <summary>How many texts there are.</summary>
    public int Count => items.Length;

    /// <summary>True when one of them is this text, by code point.</summary>
    public bool Contains(string text) => items.Contains(text);

    internal ImmutableArray<string> Items => items;
}
