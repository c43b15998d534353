using System.Globalization;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Source;
using EolSequencer.Language.Yaml;

namespace EolSequencer.Language.Csv;

/// <summary>
/// Reads a table after RFC 4180: values separated by commas, lines ended by CRLF or LF, a value with a comma, a quote or a
/// line break in double quotes, and a quote within doubled. The first line names the columns; blanks belong to a value.
/// </summary>
internal sealed class CsvReader
{
    /// <summary>The most lines a table may have beside its header.</summary>
    public const int MostRows = 10_000;

    private readonly SourceText _source;
    private readonly Report _report;
    private int _at;
    private bool _isBroken;

    private CsvReader(SourceText source, Report report) => (_source, _report) = (source, report);

    /// <summary>The table; null: already reported.</summary>
    public static CsvTable? Read(SourceText source, Report report) => new CsvReader(source, report).Read();

    private string Text => _source.Text;

    private CsvTable? Read()
    {
        if (Text.Length == 0 || Text[0] is '\r' or '\n')
        {
            _report.Add(CsvCodes.NoHeader, _source.PlaceOf(0, 0), "the first line is empty");
            return null;
        }

        var columns = Record();
        if (columns is null || !HasNames(columns)) return null;
        var rows = new List<IReadOnlyList<YamlScalar>>();
        while (_at < Text.Length)
        {
            var start = _at;
            if (Record() is not { } row) return null;
            if (row.Count != columns.Count)
            {
                _isBroken = true;
                _report.Add(CsvCodes.OtherCount, _source.PlaceOf(start, row[^1].End), string.Create(CultureInfo.InvariantCulture, $"the table has {columns.Count} columns, this line has {row.Count} values"));
                continue;
            }

            rows.Add(row);
            if (rows.Count <= MostRows) continue;
            _report.Add(CsvCodes.TooLong, row[0].Place, string.Create(CultureInfo.InvariantCulture, $"a table has at most {MostRows} lines"));
            return null;
        }

        return _isBroken ? null : new CsvTable(columns, rows);
    }

    private bool HasNames(List<YamlScalar> columns)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var isGood = true;
        foreach (var column in columns)
        {
            if (column.Text.Length > 0 && seen.Add(column.Text)) continue;
            isGood = false;
            _report.Add(CsvCodes.ColumnTwice, column.Place, column.Text.Length == 0 ? "this column has no name" : $"the column {Shown.Quoted(column.Text)} stands twice");
        }

        return isGood;
    }

    /// <summary>The values up to the end of a line, which is left behind; null: already reported.</summary>
    private List<YamlScalar>? Record()
    {
        var values = new List<YamlScalar>();
        while (true)
        {
            if (Value() is not { } value) return null;
            values.Add(value);
            if (_at < Text.Length && Text[_at] == ',')
            {
                _at++;
                continue;
            }

            if (_at < Text.Length) _at += Text[_at] == '\r' && _at + 1 < Text.Length && Text[_at + 1] == '\n' ? 2 : 1;
            return values;
        }
    }

    private YamlScalar? Value()
    {
        var start = _at;
        if (start < Text.Length && Text[start] == '"') return Quoted();
        while (_at < Text.Length && Text[_at] is not (',' or '\r' or '\n'))
        {
            if (Text[_at] == '"') return Fault(_at, "a quote stands in a value that does not begin with one");
            _at++;
        }

        return new YamlScalar(_source, start, _at, Text[start.._at], ScalarStyle.Plain);
    }

    private YamlScalar? Quoted()
    {
        var start = _at++;
        while (true)
        {
            var quote = Text.IndexOf('"', _at);
            if (quote < 0) return Fault(start, "the quotes that begin here do not end");
            _at = quote + 1;
            if (_at >= Text.Length || Text[_at] != '"') break;
            _at++;
        }

        if (_at < Text.Length && Text[_at] is not (',' or '\r' or '\n')) return Fault(_at, "text stands behind the closing quote");
        var inner = Text[(start + 1)..(_at - 1)].Replace("\"\"", "\"", StringComparison.Ordinal);
        return new YamlScalar(_source, start + 1, _at - 1, inner, ScalarStyle.Plain);
    }

    private YamlScalar? Fault(int at, string found)
    {
        _report.Add(CsvCodes.BadQuotes, _source.PlaceOf(at, at + 1), found);
        return null;
    }
}
