using System.Text;
using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace EolSequencer.Records.Sqlite;

/// <summary>
/// A prepared statement that is used again and again. Written on the engine's own calls, because a day has some 600,000 rows
/// and a command object with its parameters costs more than the row. Parameters and columns count as in SQLite: the first
/// parameter is 1, the first column 0.
/// </summary>
internal sealed class Statement : IDisposable
{
    private const int LongestOnStack = 128;

    private readonly sqlite3 _database;
    private readonly sqlite3_stmt _statement;

    public Statement(sqlite3 database, string sql)
    {
        _database = database;
        Check(raw.sqlite3_prepare_v3(database, sql, raw.SQLITE_PREPARE_PERSISTENT, out _statement));
    }

    public Statement Int(int parameter, long? number)
    {
        Check(number is { } some ? raw.sqlite3_bind_int64(_statement, parameter, some) : raw.sqlite3_bind_null(_statement, parameter));
        return this;
    }

    public Statement Real(int parameter, double? number)
    {
        Check(number is { } some ? raw.sqlite3_bind_double(_statement, parameter, some) : raw.sqlite3_bind_null(_statement, parameter));
        return this;
    }

    public Statement Blob(int parameter, ReadOnlySpan<byte> bytes)
    {
        Check(raw.sqlite3_bind_blob(_statement, parameter, bytes));
        return this;
    }

    public Statement Text(int parameter, string? text)
    {
        if (text is null)
        {
            Check(raw.sqlite3_bind_null(_statement, parameter));
            return this;
        }

        Span<byte> utf8 = stackalloc byte[LongestOnStack];
        Check(raw.sqlite3_bind_text(_statement, parameter, Encode(text, utf8)));
        return this;
    }

    /// <summary>Runs a statement that returns no rows.</summary>
    public void Run()
    {
        var code = raw.sqlite3_step(_statement);
        raw.sqlite3_reset(_statement);
        if (code != raw.SQLITE_DONE) Check(code);
    }

    /// <summary>Runs a statement that returns no rows. False when another connection has what it needs.</summary>
    public bool TryRun()
    {
        var code = raw.sqlite3_step(_statement);
        raw.sqlite3_reset(_statement);
        if (code == raw.SQLITE_BUSY) return false;
        if (code != raw.SQLITE_DONE) Check(code);
        return true;
    }

    /// <summary>Moves to the next row. False behind the last one; then the statement is ready to be used again.</summary>
    public bool Next()
    {
        var code = raw.sqlite3_step(_statement);
        if (code == raw.SQLITE_ROW) return true;
        raw.sqlite3_reset(_statement);
        if (code != raw.SQLITE_DONE) Check(code);
        return false;
    }

    /// <summary>Leaves the remaining rows unread.</summary>
    public void Reset() => raw.sqlite3_reset(_statement);

    public bool IsNull(int column) => raw.sqlite3_column_type(_statement, column) == raw.SQLITE_NULL;

    public long Int(int column) => raw.sqlite3_column_int64(_statement, column);

    public long? IntOrNull(int column) => IsNull(column) ? null : Int(column);

    public double? RealOrNull(int column) => IsNull(column) ? null : raw.sqlite3_column_double(_statement, column);

    /// <summary>Valid until the statement moves on.</summary>
    public ReadOnlySpan<byte> Blob(int column) => raw.sqlite3_column_blob(_statement, column);

    public string Text(int column) => raw.sqlite3_column_text(_statement, column).utf8_to_string();

    public string? TextOrNull(int column) => IsNull(column) ? null : Text(column);

    /// <summary>Whether a column holds just this text.</summary>
    public bool TextIs(int column, string? text)
    {
        if (text is null || IsNull(column)) return text is null == IsNull(column);
        Span<byte> utf8 = stackalloc byte[LongestOnStack];
        return Blob(column).SequenceEqual(Encode(text, utf8));
    }

    public void Dispose() => _statement.Dispose();

    private static ReadOnlySpan<byte> Encode(string text, Span<byte> stack) =>
        Encoding.UTF8.TryGetBytes(text, stack, out var length) ? stack[..length] : Encoding.UTF8.GetBytes(text);

    private void Check(int code) => SqliteException.ThrowExceptionForRC(code, _database);
}
