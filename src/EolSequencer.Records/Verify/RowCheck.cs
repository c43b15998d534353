using System.Globalization;
using EolSequencer.Records.Sqlite;

namespace EolSequencer.Records.Verify;

/// <summary>Compares a row, column by column, with what the events say; builds words only where they differ.</summary>
/// <param name="column">The column to begin with.</param>
internal sealed class RowCheck(Statement row, int column = 0)
{
    private List<string>? _differences;

    /// <summary>What differs, for people; null when nothing does.</summary>
    public string? Differences => _differences is null ? null : string.Join("; ", _differences);

    public RowCheck Text(string name, string? expected)
    {
        if (!row.TextIs(column, expected)) Differs(name, expected);
        column++;
        return this;
    }

    public RowCheck Int(string name, long? expected)
    {
        if (row.IntOrNull(column) != expected) Differs(name, expected?.ToString(CultureInfo.InvariantCulture));
        column++;
        return this;
    }

    public RowCheck Real(string name, double? expected)
    {
        if (row.RealOrNull(column) != expected) Differs(name, expected?.ToString("R", CultureInfo.InvariantCulture));
        column++;
        return this;
    }

    private void Differs(string name, string? expected)
    {
        var found = row.IsNull(column) ? "nothing" : $"'{row.Text(column)}'";
        (_differences ??= []).Add($"{name} is {found}, the events say {(expected is null ? "nothing" : $"'{expected}'")}");
    }
}
