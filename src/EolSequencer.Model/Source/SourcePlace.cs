namespace EolSequencer.Model.Source;

/// <summary>Where something stands in a file an author wrote.</summary>
/// <param name="File">Path as the author would type it, relative to the working folder when it lies below it.</param>
/// <param name="Line">Line of the first character, from 1.</param>
/// <param name="Column">Column of the first character, from 1, counted in UTF-16 units.</param>
/// <param name="EndLine">Line of the end, from 1.</param>
/// <param name="EndColumn">Column just behind the last character, from 1.</param>
public readonly record struct SourcePlace(string File, int Line, int Column, int EndLine, int EndColumn)
{
    /// <summary>A place of its own for what no file says (a command-line value, a built-in).</summary>
    public static SourcePlace None { get; } = new("", 0, 0, 0, 0);

    /// <summary>The form that editors and build servers jump to: <c>file:line:column</c>.</summary>
    public override string ToString() => Line == 0 ? File : $"{File}:{Line}:{Column}";
}
