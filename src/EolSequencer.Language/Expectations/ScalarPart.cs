using EolSequencer.Language.Yaml;
using EolSequencer.Model.Source;

namespace EolSequencer.Language.Expectations;

/// <summary>A piece of an author's text that knows where it stands.</summary>
/// <param name="Scalar">The whole text.</param>
/// <param name="Start">Offset of the piece in <see cref="YamlScalar.Text"/>.</param>
/// <param name="Length">Its length in UTF-16 units.</param>
internal readonly record struct ScalarPart(YamlScalar Scalar, int Start, int Length)
{
    public static ScalarPart Whole(YamlScalar scalar) => new ScalarPart(scalar, 0, scalar.Text.Length).Trim();

    public string Text => Scalar.Text.Substring(Start, Length);

    public ReadOnlySpan<char> Span => Scalar.Text.AsSpan(Start, Length);

    public bool IsEmpty => Length == 0;

    public SourcePlace Place => Scalar.PlaceOf(Start, Length);

    /// <summary>The piece from an offset in this piece to its end, or so many characters of it.</summary>
    public ScalarPart From(int offset, int? length = null) => new(Scalar, Start + offset, length ?? Length - offset);

    /// <summary>The first characters of this piece.</summary>
    public ScalarPart Before(int offset) => new(Scalar, Start, offset);

    /// <summary>Without blanks and line breaks around it.</summary>
    public ScalarPart Trim()
    {
        var front = Length - Span.TrimStart().Length;
        return new(Scalar, Start + front, Span.Trim().Length);
    }

    /// <summary>This piece with some of its characters replaced, for a hint.</summary>
    public string With(int offset, int length, string replacement) => $"{Span[..offset]}{replacement}{Span[(offset + length)..]}";

    public override string ToString() => Text;
}
