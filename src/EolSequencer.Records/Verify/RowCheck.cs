using System.Globalization;
using EolSequencer.Records.Sqlite;

namespace EolSequencer.Records.Verify;

/// <summary>Compares a row, column by column from the first, with what the events say; builds words only where they differ.</summary>
internal sealed class RowCheck(Statement row)
{
    private List<string>? _differences;
    private int _column;

    /// <summary>What differs, for people; null when nothing does.</summary>
    public string? Differences => _differences is null ? null : string.Join("; ", _differences);

    public RowCheck Text(string name, string? expected)
    {
        if (!row.TextIs(_column, expected)) Differs(name, expected);
        _column++;
        return this;
    }

    public RowCheck Int(string name, long? expected)
    {
        if (row.IntOrNull(_column) != expected) Differs(name, expected?.ToString(CultureInfo.InvariantCulture));
        _column++;
        return this;
    }

    public RowCheck Real(string name, double? expected)
    {
        if (row.RealOrNull(_column) != expected) Differs(name, expected?.ToString("R", CultureInfo.InvariantCulture));
        _column++;
        return this;
    }

    private void Differs(string name, string? expected)
    {
        var found = row.IsNull(_column) ? "nothing" : $"'{row.Text(_column)}'";
        (_differences ??= []).Add($"{name} is {found}, the events say {(expected is null ? "nothing" : $"'{expected}'")}");
    }
}
