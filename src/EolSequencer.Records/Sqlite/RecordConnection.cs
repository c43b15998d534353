using System.Globalization;
using Dapper;
using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace EolSequencer.Records.Sqlite;

/// <summary>
/// One connection to <c>record.db</c>. Writers begin their transactions as immediate: one that reads first and writes later
/// could be told to give up after the whole waiting time, although trying again could never help.
/// </summary>
internal sealed class RecordConnection : IDisposable
{
    private readonly List<Statement> _statements = [];
    private readonly Statement? _begin;
    private readonly Statement? _commit;
    private readonly Statement? _rollback;

    private RecordConnection(SqliteConnection connection, bool writes)
    {
        Connection = connection;
        if (!writes) return;
        _begin = Prepare("BEGIN IMMEDIATE");
        _commit = Prepare("COMMIT");
        _rollback = Prepare("ROLLBACK");
    }

    /// <summary>For plain queries.</summary>
    public SqliteConnection Connection { get; }

    private sqlite3 Handle => Connection.Handle ?? throw new ObjectDisposedException(nameof(RecordConnection));

    /// <summary>A connection that writes; the file is made when it is not there.</summary>
    /// <param name="file">Path of the database.</param>
    /// <param name="durable">True: every transaction is on the disk before the commit returns. False: whole after a crash, but the last ones may be missing.</param>
    /// <param name="options">Limits.</param>
    public static RecordConnection ForWriting(string file, bool durable, RecordOptions options)
    {
        var connection = Open(file, SqliteOpenMode.ReadWriteCreate, options);
        connection.ExecuteScalar<string>("PRAGMA journal_mode = WAL");
        connection.Execute(durable ? "PRAGMA synchronous = FULL" : "PRAGMA synchronous = NORMAL");
        connection.ExecuteScalar<long>(string.Create(CultureInfo.InvariantCulture, $"PRAGMA journal_size_limit = {options.LogKeptBytes}"));
        if (options.MostPages is { } pages) connection.ExecuteScalar<long>(string.Create(CultureInfo.InvariantCulture, $"PRAGMA max_page_count = {pages}"));
        return new RecordConnection(connection, writes: true);
    }

    /// <summary>A connection that only reads a file that is there. To be closed soon: while it reads, the write-ahead log cannot shrink.</summary>
    public static RecordConnection ForReading(string file, RecordOptions options) =>
        new(Open(file, SqliteOpenMode.ReadOnly, options), writes: false);

    /// <summary>A statement that lives as long as the connection.</summary>
    public Statement Prepare(string sql)
    {
        var statement = new Statement(Handle, sql);
        _statements.Add(statement);
        return statement;
    }

    /// <summary>From here on until it is closed, this connection sees the record as it is now, whatever is written meanwhile.</summary>
    public void HoldMoment() => Connection.Execute("BEGIN DEFERRED");

    public void Begin() => _begin!.Run();

    public void Commit() => _commit!.Run();

    /// <summary>Undoes what is open; nothing when the engine has done so already, as it does when the disk is full.</summary>
    public void Rollback()
    {
        if (raw.sqlite3_get_autocommit(Handle) == 0) _rollback!.Run();
    }

    public void Dispose()
    {
        foreach (var statement in _statements) statement.Dispose();
        Connection.Dispose();
    }

    private static SqliteConnection Open(string file, SqliteOpenMode mode, RecordOptions options)
    {
        var text = new SqliteConnectionStringBuilder
        {
            DataSource = file,
            Mode = mode,
            Pooling = false,
            DefaultTimeout = (int)Math.Ceiling(options.LongestWait.TotalSeconds),
        };
        var connection = new SqliteConnection(text.ToString());
        try
        {
            connection.Open();
            raw.sqlite3_busy_timeout(connection.Handle!, (int)options.LongestWait.TotalMilliseconds);
            return connection;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }
}
