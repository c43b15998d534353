using EolSequencer.Model.Source;

namespace EolSequencer.Language.Editing;

/// <summary>A place between two characters, as editors count.</summary>
/// <param name="Line">From 0.</param>
/// <param name="Column">From 0, in UTF-16 units.</param>
public readonly record struct TextPosition(int Line, int Column);

/// <summary>Some characters of a file, as editors count.</summary>
/// <param name="End">Just behind the last one.</param>
public readonly record struct TextRange(TextPosition Start, TextPosition End)
{
    /// <summary>The range of a place; the beginning of the file for what concerns it as a whole.</summary>
    public static TextRange Of(SourcePlace place) => place.Line == 0
        ? default
        : new TextRange(new TextPosition(place.Line - 1, place.Column - 1), new TextPosition(place.EndLine - 1, place.EndColumn - 1));
}
