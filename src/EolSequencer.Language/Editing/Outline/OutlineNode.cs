namespace EolSequencer.Language.Editing.Outline;

/// <summary>A piece of a text as far as it can be told, whatever is wrong with it.</summary>
internal abstract class OutlineNode;

/// <summary>Keys with what stands behind them.</summary>
internal sealed class OutlineMap : OutlineNode
{
    public List<OutlineEntry> Entries { get; } = [];

    /// <summary>What stands behind a key; null when it is not there or nothing stands behind it.</summary>
    public OutlineNode? Find(string key) => Entries.Find(entry => entry.Key.Text == key)?.Value;

    /// <summary>The text behind a key; null when there is none.</summary>
    public string? TextOf(string key) => (Find(key) as OutlineText)?.Text;
}

/// <summary>The items of a list.</summary>
internal sealed class OutlineList : OutlineNode
{
    public List<OutlineNode> Items { get; } = [];
}

/// <summary>A text, also one that is still being written.</summary>
/// <param name="text">Without the quotes around it; what they escape is left as it is.</param>
/// <param name="start">Offset of its first character, behind a quote.</param>
internal sealed class OutlineText(string text, int start) : OutlineNode
{
    public string Text => text;

    public int Start => start;

    public int End => start + text.Length;

    /// <summary>Whether a caret at an offset touches it.</summary>
    public bool Touches(int offset) => offset >= start && offset <= End;
}

/// <summary>A key and what stands behind it.</summary>
/// <param name="HasColon">False: it may yet become a key, or an item of a list.</param>
internal sealed record OutlineEntry(OutlineText Key, bool HasColon, OutlineNode? Value);
