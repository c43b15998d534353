using EolSequencer.Language.Source;

namespace EolSequencer.Language.Yaml.Faults;

/// <summary>
/// Goes once more from the last thing the parser handed out to the place where it stopped. The parser looks ahead, so
/// brackets and a text that it has seen but not handed out lie between.
/// </summary>
internal sealed class Retrace
{
    private readonly string _letters;
    private readonly SourceText _source;
    private readonly List<int> _brackets;
    private int _text = -1;

    /// <param name="stop">Where the parser points; <c>null</c> when it points nowhere.</param>
    public Retrace(SourceText source, TreeBuilder built, int? stop)
    {
        _source = source;
        _letters = source.Text;
        _brackets = [.. built.Open.Where(open => open.HasBracket).Select(open => open.Start)];
        var at = Walk(built.LastEnd, stop);
        Pending = _text >= 0 ? _text : Math.Min(stop ?? at, _letters.Length);
    }

    /// <summary>Offset where the text begins that the parser was busy with, or where it stopped if it was between texts.</summary>
    public int Pending { get; }

    /// <summary>True when the pending text is the value of a key.</summary>
    public bool IsBehindColon { get; private set; }

    /// <summary>Offsets of the brackets that are open, outermost first.</summary>
    public IReadOnlyList<int> Brackets => _brackets;

    private bool InFlow => _brackets.Count > 0;

    private int Walk(int at, int? stop)
    {
        while (at < (stop ?? _letters.Length))
        {
            var letter = _letters[at];
            if (char.IsWhiteSpace(letter)) at++;
            else if (IsComment(at)) at = _source.EndOfLine(_source.LineOf(at));
            else if (letter is '[' or '{' && (_text < 0 || InFlow)) at = Structure(at, () => _brackets.Add(at));
            else if (letter is ']' or '}' && InFlow) at = Structure(at, () => _brackets.RemoveAt(_brackets.Count - 1));
            else if (letter == ',' && InFlow) at = Structure(at);
            else if (letter is '-' or '?' && IsBlankBehind(at) && (!IsBehindColon || IsFirstInLine(at))) at = Structure(at);
            else if (letter == ':' && (IsBlankBehind(at) || InFlow)) (at, IsBehindColon) = (Structure(at), true);
            else
            {
                if (_text < 0) _text = at;
                var end = letter is '"' or '\'' && _text == at ? BehindQuotes(at) : BehindPlain(at);
                // Without a place to stop at, it was a text within brackets that ran over its line's end.
                if (stop is null && InFlow && IsLineEnd(end)) return end;
                at = end;
            }
        }

        return at;
    }

    private int Structure(int at, Action? change = null)
    {
        change?.Invoke();
        _text = -1;
        IsBehindColon = false;
        return at + 1;
    }

    private int BehindQuotes(int at)
    {
        for (var closing = at + 1; closing < _letters.Length; closing++)
        {
            if (_letters[closing] == '\\' && _letters[at] == '"') closing++;
            else if (_letters[closing] == _letters[at]) return closing + 1;
        }

        return _letters.Length;
    }

    private int BehindPlain(int at)
    {
        var lineEnd = _source.EndOfLine(_source.LineOf(at));
        var end = at + 1;
        while (end < lineEnd)
        {
            if (InFlow && _letters[end] is ',' or '[' or ']' or '{' or '}') break;
            if (IsComment(end) || _letters[end] == ':' && (end + 1 == lineEnd || IsBlankBehind(end))) break;
            end++;
        }

        return end;
    }

    private bool IsLineEnd(int at)
    {
        while (at < _letters.Length && _letters[at] is ' ' or '\t') at++;
        return at >= _letters.Length || _letters[at] is '\r' or '\n' || IsComment(at);
    }

    private bool IsComment(int at) => _letters[at] == '#' && (at == 0 || char.IsWhiteSpace(_letters[at - 1]));

    private bool IsFirstInLine(int at) => _source.Text.AsSpan(_source.StartOfLine(_source.LineOf(at))..at).IsWhiteSpace();

    private bool IsBlankBehind(int at) => at + 1 >= _letters.Length || char.IsWhiteSpace(_letters[at + 1]);
}
