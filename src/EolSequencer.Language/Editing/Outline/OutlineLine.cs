namespace EolSequencer.Language.Editing.Outline;

/// <summary>A line with something in it.</summary>
/// <param name="Indent">Column of its first character, from 0.</param>
/// <param name="Start">Offset of that character.</param>
/// <param name="End">Offset behind its last character, a comment and blanks not counted.</param>
/// <param name="FullEnd">Offset behind its last character.</param>
internal readonly record struct OutlineLine(int Indent, int Start, int End, int FullEnd)
{
    public bool IsEmpty => Start >= End;

    public static List<OutlineLine> Of(string text)
    {
        var lines = new List<OutlineLine>();
        for (var from = 0; from < text.Length;)
        {
            var length = text.AsSpan(from).IndexOfAny('\r', '\n');
            var end = length < 0 ? text.Length : from + length;
            var start = from;
            while (start < end && text[start] is ' ' or '\t') start++;
            var content = ContentEnd(text, start, end);
            if (content > start) lines.Add(new OutlineLine(start - from, start, content, end));
            from = end + 1;
        }

        return lines;
    }

    /// <summary>Whether it begins an item of a list.</summary>
    public bool IsItem(string text) => !IsEmpty && text[Start] == '-' && (Start + 1 >= text.Length || text[Start + 1] is ' ' or '\t' or '\r' or '\n' || Start + 1 == End);

    /// <summary>The rest behind the dash, as a line of its own.</summary>
    public OutlineLine BehindDash(string text)
    {
        var start = Start + 1;
        while (start < End && text[start] is ' ' or '\t') start++;
        return this with { Indent = Indent + start - Start, Start = start };
    }

    /// <summary>Offset of the colon that makes a key of what is in front of it; -1 when there is none.</summary>
    public int Colon(string text)
    {
        var at = Start;
        if (at < End && text[at] is '{' or '[') return -1;
        if (at < End && text[at] is '"' or '\'') at = QuoteEnd(text, at, End);
        for (; at < End; at++)
        {
            if (text[at] == ':' && (at + 1 >= End || text[at + 1] is ' ' or '\t')) return at;
        }

        return -1;
    }

    /// <summary>Offset behind the quote that closes the one at an offset; the end when none does.</summary>
    public static int QuoteEnd(string text, int open, int end)
    {
        for (var at = open + 1; at < end; at++)
        {
            if (text[open] == '"' && text[at] == '\\') at++;
            else if (text[at] == text[open])
            {
                if (text[open] == '\'' && at + 1 < end && text[at + 1] == '\'') at++;
                else return at + 1;
            }
        }

        return end;
    }

    // A quote opens a text only where a text can begin.
    private static int ContentEnd(string text, int start, int end)
    {
        for (var at = start; at < end; at++)
        {
            if (text[at] is '"' or '\'' && (at == start || text[at - 1] is ' ' or '[' or '{' or ',' or '\t')) at = QuoteEnd(text, at, end) - 1;
            else if (text[at] == '#' && (at == start || text[at - 1] is ' ' or '\t'))
            {
                end = at;
                break;
            }
        }

        while (end > start && text[end - 1] is ' ' or '\t') end--;
        return end;
    }
}
