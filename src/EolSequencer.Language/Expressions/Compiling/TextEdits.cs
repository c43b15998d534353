using System.Text;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>
/// Changes to an author's text: names become reads of the scope, the rest stays letter by letter. Knows for every part of
/// the changed text which part of the author's it stands for.
/// </summary>
/// <param name="text">The author's text; what stands behind <paramref name="end"/> is left out.</param>
internal sealed class TextEdits(string text, int end)
{
    private readonly List<Edit> _edits = [];
    private List<Piece> _pieces = [];

    /// <summary>Puts <paramref name="written"/> in the place of some characters, none to insert. Edits do not overlap.</summary>
    /// <param name="from">First of the author's characters it stands for, when faults in it concern more than it replaces.</param>
    /// <param name="to">Just behind the last of them.</param>
    public void Replace(int start, int end, string written, int from, int to) =>
        _edits.Add(new Edit(start, end, written, from, to, _edits.Count));

    public void Replace(int start, int end, string written) => Replace(start, end, written, start, end);

    /// <summary>The changed text.</summary>
    public string Apply()
    {
        var changed = new StringBuilder(text.Length * 2);
        _pieces = [];
        var at = 0;
        foreach (var edit in _edits.OrderBy(edit => edit.Start).ThenBy(edit => edit.End).ThenBy(edit => edit.Order))
        {
            Copy(at, edit.Start);
            _pieces.Add(new Piece(changed.Length, edit.Written.Length, edit.From, edit.To, false));
            changed.Append(edit.Written);
            at = edit.End;
        }

        Copy(at, end);
        return changed.ToString();

        void Copy(int start, int end)
        {
            if (start == end) return;
            _pieces.Add(new Piece(changed.Length, end - start, start, end, true));
            changed.Append(text, start, end - start);
        }
    }

    /// <summary>True when a character of the changed text is the author's own.</summary>
    public bool IsCopied(int position) => PieceAt(position) is { IsCopied: true };

    /// <summary>The author's characters that a part of the changed text stands for.</summary>
    public (int Start, int Length) ToAuthor(int start, int length)
    {
        if (PieceAt(start) is not { } first) return (0, end);
        var last = PieceAt(Math.Max(start, start + length - 1)) ?? first;
        var from = first.IsCopied ? first.From + start - first.Start : first.From;
        var to = last.IsCopied ? last.From + start + length - last.Start : last.To;
        return to > from ? (from, to - from) : (from, 0);
    }

    private Piece? PieceAt(int position)
    {
        foreach (var piece in _pieces)
        {
            if (position >= piece.Start && position < piece.Start + piece.Length) return piece;
        }

        return null;
    }

    private sealed record Edit(int Start, int End, string Written, int From, int To, int Order);

    private sealed record Piece(int Start, int Length, int From, int To, bool IsCopied);
}
