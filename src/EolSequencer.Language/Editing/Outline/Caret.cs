namespace EolSequencer.Language.Editing.Outline;

/// <summary>Where in the structure of a file its reader's caret is.</summary>
/// <param name="Root">The whole file.</param>
/// <param name="Offset">Where the caret is in the text.</param>
/// <param name="Around">The maps around the caret, outermost first, each with the entry that leads on; the last entry is null when the caret is in a key of it.</param>
/// <param name="Text">What the caret touches: a key, a text behind one, or an item of a list.</param>
/// <param name="IsKey">True when it is a key, or could become one.</param>
/// <param name="IsItem">True when it is an item of a list, or could become one.</param>
internal sealed record Caret(OutlineMap Root, int Offset, IReadOnlyList<(OutlineMap Map, OutlineEntry? Entry)> Around, OutlineText Text, bool IsKey, bool IsItem)
{
    // No file holds this letter: the reader of files refuses it.
    private const char Mark = '\u0001';

    /// <summary>The map the caret is in, and the entry whose value it is in.</summary>
    public (OutlineMap Map, OutlineEntry? Entry) Innermost => Around[^1];

    /// <summary>The part of <see cref="Text"/> in front of the caret.</summary>
    public string Before => Text.Text[..(Offset - Text.Start)];

    /// <summary>Where the caret is; null in a comment or where nothing can be told.</summary>
    /// <remarks>A letter is put in at the caret, so that a blank line has a structure as well; it is not part of what is handed on.</remarks>
    public static Caret? Find(string text, int offset)
    {
        var root = OutlineReader.Read(text.Insert(offset, Mark.ToString()));
        var around = new List<(OutlineMap, OutlineEntry?)>();
        if (Search(root, around, isItem: false) is not { } found || around.Count == 0) return null;
        return new Caret(root, offset, around, new OutlineText(found.Text.Text.Replace(Mark.ToString(), "", StringComparison.Ordinal), found.Text.Start), found.IsKey, found.IsItem);
    }

    /// <summary>The offset in the text of something found in the structure, which holds one letter more.</summary>
    public int ToText(int found) => found > Offset ? found - 1 : found;

    private static (OutlineText Text, bool IsKey, bool IsItem)? Search(OutlineNode? node, List<(OutlineMap, OutlineEntry?)> around, bool isItem)
    {
        switch (node)
        {
            case OutlineText text:
                return text.Text.Contains(Mark) ? (text, isItem, isItem) : null;
            case OutlineList list:
                return list.Items.Select(item => Search(item, around, isItem: true)).FirstOrDefault(found => found is not null);
            case OutlineMap map:
                foreach (var entry in map.Entries)
                {
                    if (entry.Key.Text.Contains(Mark))
                    {
                        around.Add((map, null));
                        return (entry.Key, true, false);
                    }

                    around.Add((map, entry));
                    if (Search(entry.Value, around, isItem: false) is { } found) return found;
                    around.RemoveAt(around.Count - 1);
                }

                return null;
            default:
                return null;
        }
    }
}
