namespace EolSequencer.Language.Editing.Outline;

/// <summary>Reads a value in brackets up to a limit, closed or not.</summary>
internal sealed class OutlineFlow(string text, int from, int limit)
{
    private int _at = from;

    /// <summary>True when a bracket was still open at the limit.</summary>
    public bool IsOpen { get; private set; }

    public OutlineNode Value()
    {
        SkipBlanks();
        if (_at >= limit) return new OutlineText("", Math.Min(_at, limit));
        return text[_at] switch
        {
            '{' => Map(),
            '[' => List(),
            _ => Text(isKey: false),
        };
    }

    private OutlineMap Map()
    {
        var map = new OutlineMap();
        _at++;
        while (true)
        {
            SkipBlanks();
            if (_at >= limit)
            {
                IsOpen = true;
                return map;
            }

            if (text[_at] == '}')
            {
                _at++;
                return map;
            }

            if (text[_at] is ',' or ']')
            {
                _at++;
                continue;
            }

            var key = Text(isKey: true);
            SkipBlanks();
            if (_at < limit && text[_at] == ':')
            {
                _at++;
                map.Entries.Add(new OutlineEntry(key, true, Value()));
            }
            else
            {
                map.Entries.Add(new OutlineEntry(key, false, null));
            }
        }
    }

    private OutlineList List()
    {
        var list = new OutlineList();
        _at++;
        while (true)
        {
            SkipBlanks();
            if (_at >= limit)
            {
                IsOpen = true;
                return list;
            }

            if (text[_at] == ']')
            {
                _at++;
                return list;
            }

            if (text[_at] is ',' or '}') _at++;
            else list.Items.Add(Value());
        }
    }

    private OutlineText Text(bool isKey)
    {
        var start = _at;
        if (text[_at] is '"' or '\'')
        {
            var end = OutlineLine.QuoteEnd(text, _at, limit);
            _at = end;
            var close = end - start > 1 && text[end - 1] == text[start] ? end - 1 : end;
            return new OutlineText(text[(start + 1)..close], start + 1);
        }

        // Brackets inside a plain text belong to it as long as they close: an index, a call.
        var depth = 0;
        for (; _at < limit; _at++)
        {
            var letter = text[_at];
            if (letter is '[' or '(') depth++;
            else if (letter is ']' or ')' && depth > 0) depth--;
            else if (letter is '}' or ']' || (letter == ',' && depth == 0)) break;
            else if (isKey && letter == ':' && (_at + 1 >= limit || text[_at + 1] is ' ' or '\t' or '\r' or '\n' or ',' or '}')) break;
        }

        var length = _at - start;
        while (length > 0 && char.IsWhiteSpace(text[start + length - 1])) length--;
        return new OutlineText(text.Substring(start, length), start);
    }

    private void SkipBlanks()
    {
        while (_at < limit && char.IsWhiteSpace(text[_at])) _at++;
    }
}
