namespace EolSequencer.Language.Editing.Outline;

/// <summary>
/// Reads the structure of a file by its indents and brackets, and never gives up: a line that means nothing yet is a key
/// in the making, a bracket that is open closes where the indent does. Only an editor asks it; what a file means is
/// read from YAML.
/// </summary>
internal sealed class OutlineReader
{
    private readonly string _text;
    private readonly List<OutlineLine> _lines;
    private int _at;

    private OutlineReader(string text)
    {
        _text = text;
        _lines = OutlineLine.Of(text);
    }

    /// <summary>The outermost map; empty when there is none.</summary>
    public static OutlineMap Read(string text) => new OutlineReader(text).Block(0) as OutlineMap ?? new OutlineMap();

    private OutlineLine? Next => _at < _lines.Count ? _lines[_at] : null;

    /// <summary>What begins with the next line, if it is indented at least so far.</summary>
    private OutlineNode? Block(int least)
    {
        if (Next is not { } first || first.Indent < least) return null;
        return first.IsItem(_text) ? List(first.Indent) : Map(first.Indent);
    }

    private OutlineList List(int indent)
    {
        var list = new OutlineList();
        while (Next is { } line && line.Indent >= indent)
        {
            // What is indented further than the item before it belongs to nobody.
            if (line.Indent > indent || !line.IsItem(_text))
            {
                if (line.Indent == indent) break;
                _at++;
                continue;
            }

            _lines[_at] = line.BehindDash(_text);
            list.Items.Add(Item(indent));
        }

        return list;
    }

    private OutlineNode Item(int indent)
    {
        var line = _lines[_at];
        if (line.IsEmpty)
        {
            _at++;
            return Block(indent + 1) ?? new OutlineText("", line.Start);
        }

        if (_text[line.Start] is '{' or '[') return Flow(line.Start, indent);
        return line.IsItem(_text) ? List(line.Indent) : line.Colon(_text) < 0 ? Scalar(line.Start, indent) : Map(line.Indent);
    }

    private OutlineMap Map(int indent)
    {
        var map = new OutlineMap();
        while (Next is { } line && line.Indent >= indent && !(line.Indent == indent && line.IsItem(_text)))
        {
            var colon = line.Colon(_text);
            if (colon < 0)
            {
                _at++;
                map.Entries.Add(new OutlineEntry(new OutlineText(_text[line.Start..line.End], line.Start), false, null));
                continue;
            }

            map.Entries.Add(new OutlineEntry(Unquoted(line.Start, colon), true, Value(line, colon + 1)));
        }

        return map;
    }

    private OutlineNode? Value(OutlineLine line, int from)
    {
        while (from < line.End && _text[from] is ' ' or '\t') from++;
        if (from >= line.End)
        {
            _at++;
            if (Next is not { } below) return new OutlineText("", Math.Min(from, line.End));
            var isBelow = below.Indent > line.Indent || (below.Indent == line.Indent && below.IsItem(_text));
            return isBelow ? Block(below.Indent) : new OutlineText("", Math.Min(from, line.End));
        }

        return _text[from] is '{' or '[' ? Flow(from, line.Indent) : Scalar(from, line.Indent);
    }

    /// <summary>A text, with the lines below it that are indented further and hold no key.</summary>
    private OutlineText Scalar(int from, int indent)
    {
        var line = _lines[_at++];
        var isBlock = _text[from] is '|' or '>';
        var end = line.End;
        while (Next is { } further && further.Indent > indent && (isBlock || further.Colon(_text) < 0 && !further.IsItem(_text)))
        {
            end = further.End;
            _at++;
        }

        return Unquoted(from, end);
    }

    /// <summary>A value in brackets, which may go on over lines that are indented further.</summary>
    private OutlineNode Flow(int from, int indent)
    {
        var limit = _lines[_at++].FullEnd;
        var reader = new OutlineFlow(_text, from, limit);
        var node = reader.Value();
        while (reader.IsOpen && Next is { } further && further.Indent > indent)
        {
            limit = further.FullEnd;
            _at++;
            reader = new OutlineFlow(_text, from, limit);
            node = reader.Value();
        }

        return node;
    }

    private OutlineText Unquoted(int start, int end)
    {
        while (end > start && _text[end - 1] is ' ' or '\t') end--;
        if (start >= end || _text[start] is not ('"' or '\'')) return new OutlineText(_text[start..end], start);
        var close = end - start > 1 && _text[end - 1] == _text[start] ? end - 1 : end;
        return new OutlineText(_text[(start + 1)..close], start + 1);
    }
}
