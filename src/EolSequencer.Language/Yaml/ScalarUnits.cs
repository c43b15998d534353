using System.Globalization;

namespace EolSequencer.Language.Yaml;

/// <summary>
/// Steps through the written form of a scalar, one character of its meaning at a time: <c>''</c> in single quotes and
/// <c>\u00e9</c> in double quotes are one step each. Folding is not applied.
/// </summary>
internal struct ScalarUnits
{
    private readonly string _letters;
    private readonly int _end;
    private readonly ScalarStyle _style;
    private string _pending;
    private int _pendingAt;

    public ScalarUnits(string letters, int start, int end, ScalarStyle style)
    {
        _letters = letters;
        _end = end;
        _style = style;
        _pending = "";
        Start = End = start;
        Next();
    }

    /// <summary>Offset in the file of the current step.</summary>
    public int Start { get; private set; }

    /// <summary>Offset just behind it.</summary>
    public int End { get; private set; }

    /// <summary>What the current step means.</summary>
    public readonly char Letter => _pending[_pendingAt];

    public readonly bool AtEnd => _pendingAt >= _pending.Length;

    public void Next()
    {
        if (++_pendingAt < _pending.Length) return;
        do
        {
            Start = End;
            _pending = "";
            _pendingAt = 0;
            if (Start >= _end) return;
            (_pending, var length) = Decode(Start);
            End = Math.Min(Start + length, _end);
        }
        while (_pending.Length == 0);
    }

    private readonly (string Meaning, int Length) Decode(int at)
    {
        var letter = _letters[at];
        var next = at + 1 < _end ? _letters[at + 1] : '\0';
        if (letter == '\r' && next == '\n') return ("\n", 2);
        if (_style == ScalarStyle.SingleQuoted && letter == '\'' && next == '\'') return ("'", 2);
        if (_style == ScalarStyle.DoubleQuoted && letter == '\\') return DecodeEscape(at, next);
        return (letter.ToString(), 1);
    }

    // YAML 1.2.2 section 5.7, escaped characters.
    private readonly (string Meaning, int Length) DecodeEscape(int at, char escape) => escape switch
    {
        'x' => DecodeNumber(at, 2),
        'u' => DecodeNumber(at, 4),
        'U' => DecodeNumber(at, 8),
        '\n' => ("", 2),
        '\r' => ("", at + 2 < _end && _letters[at + 2] == '\n' ? 3 : 2),
        'n' => ("\n", 2),
        't' => ("\t", 2),
        'r' => ("\r", 2),
        '0' => ("\0", 2),
        'a' => ("\a", 2),
        'b' => ("\b", 2),
        'v' => ("\v", 2),
        'f' => ("\f", 2),
        'e' => ("\e", 2),
        'N' => ("\u0085", 2),
        '_' => ("\u00A0", 2),
        'L' => ("\u2028", 2),
        'P' => ("\u2029", 2),
        _ => (escape.ToString(), 2),
    };

    private readonly (string Meaning, int Length) DecodeNumber(int at, int digits)
    {
        var isNumber = int.TryParse(
            _letters.AsSpan(at + 2, Math.Min(digits, _end - at - 2)), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var number);
        // Half of a surrogate pair is a step of its own, as in the text.
        if (isNumber && number is >= 0 and <= 0xFFFF) return (((char)number).ToString(), digits + 2);
        var isLetter = isNumber && number is > 0xFFFF and <= 0x10FFFF;
        return (isLetter ? char.ConvertFromUtf32(number) : "\uFFFD", digits + 2);
    }
}
