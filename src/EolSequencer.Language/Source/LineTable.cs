namespace EolSequencer.Language.Source;

/// <summary>Where the lines of a text begin. A line ends with LF, CR LF or a lone CR.</summary>
internal sealed class LineTable
{
    private readonly string _text;
    private readonly int[] _starts;

    public LineTable(string text)
    {
        _text = text;
        var starts = new List<int>(text.Length / 24 + 4) { 0 };
        for (var at = text.AsSpan().IndexOfAny('\r', '\n'); at >= 0;)
        {
            var next = text[at] == '\r' && at + 1 < text.Length && text[at + 1] == '\n' ? at + 2 : at + 1;
            starts.Add(next);
            var further = text.AsSpan(next).IndexOfAny('\r', '\n');
            at = further < 0 ? -1 : next + further;
        }

        _starts = [.. starts];
    }

    public int Count => _starts.Length;

    /// <summary>The offset of a line's first character. Lines count from 1.</summary>
    public int StartOf(int line) => _starts[line - 1];

    /// <summary>The offset just behind a line's last character, its line break not included.</summary>
    public int EndOf(int line)
    {
        var end = line < _starts.Length ? _starts[line] : _text.Length;
        while (end > StartOf(line) && _text[end - 1] is '\r' or '\n') end--;
        return end;
    }

    /// <summary>The line (from 1) an offset lies in.</summary>
    public int LineOf(int offset)
    {
        var found = Array.BinarySearch(_starts, offset);
        return found >= 0 ? found + 1 : ~found;
    }
}
