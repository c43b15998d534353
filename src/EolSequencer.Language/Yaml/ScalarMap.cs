namespace EolSequencer.Language.Yaml;

/// <summary>
/// Leads from an offset in a scalar's text back to the file. YAML changes blanks and line breaks of a text (folding,
/// indentation) and, in quotes, escapes; every other character stands in the file in the same order. So both are walked
/// side by side.
/// </summary>
internal sealed class ScalarMap
{
    private readonly int _contentStart;
    private readonly int[]? _starts;
    private readonly int[]? _ends;

    private ScalarMap(int contentStart) => _contentStart = contentStart;

    private ScalarMap(int[] starts, int[] ends)
    {
        _starts = starts;
        _ends = ends;
    }

    public bool IsVerbatim => _starts is null;

    /// <summary>Offset in the file of a character of the text; of the text's end for its length.</summary>
    public int StartOf(int offset) => _starts is null ? _contentStart + offset : _starts[offset];

    /// <summary>Offset in the file just behind a character of the text.</summary>
    public int EndOf(int offset) => _ends is null ? _contentStart + offset + 1 : _ends[offset];

    public static ScalarMap Of(YamlScalar scalar)
    {
        var letters = scalar.Source.Text;
        var (start, end) = ContentSpan(scalar);
        return letters.AsSpan(start, end - start).SequenceEqual(scalar.Text) && !scalar.Text.Contains('\n')
            ? new ScalarMap(start)
            : Walk(scalar, start, end);
    }

    private static (int Start, int End) ContentSpan(YamlScalar scalar)
    {
        if (scalar.Style == ScalarStyle.Plain) return (scalar.Start, scalar.End);
        if (scalar.Style is ScalarStyle.Literal or ScalarStyle.Folded)
        {
            var header = scalar.Source.LineOf(scalar.Start);
            var first = header < scalar.Source.LineCount ? scalar.Source.StartOfLine(header + 1) : scalar.End;
            return (Math.Min(first, scalar.End), scalar.End);
        }

        return (Math.Min(scalar.Start + 1, scalar.End), Math.Max(scalar.Start + 1, scalar.End - 1));
    }

    private static ScalarMap Walk(YamlScalar scalar, int start, int end)
    {
        var text = scalar.Text;
        var (starts, ends) = (new int[text.Length + 1], new int[text.Length + 1]);
        var units = new ScalarUnits(scalar.Source.Text, start, end, scalar.Style);
        for (var offset = 0; offset < text.Length; offset++)
        {
            var wanted = text[offset];
            var isBlank = IsBlank(wanted);
            while (!isBlank && !units.AtEnd && units.Letter != wanted && IsBlank(units.Letter)) units.Next();
            starts[offset] = units.Start;
            ends[offset] = units.End;
            // A blank that stands for something else (a joined line break) is placed there, but does not use it up.
            if (!units.AtEnd && units.Letter == wanted) units.Next();
        }

        starts[text.Length] = ends[text.Length] = text.Length == 0 ? start : ends[text.Length - 1];
        return new ScalarMap(starts, ends);
    }

    private static bool IsBlank(char letter) => letter is ' ' or '\t' or '\n' or '\r';
}
