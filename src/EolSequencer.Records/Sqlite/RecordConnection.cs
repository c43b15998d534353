using System.Globalization;
using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace EolSequencer.Records.Sqlite;

/// <summary>
/// One connection to <c>record.db</c>. Writers begin their transactions as immediate: one that reads first and writes later
/// could be told to give up after the whole waiting time, although trying again could never help.
/// </summary>
internal sealed class RecordConnection : IDisposable
{
    /// <summary>
    /// The engine's own waiting looks less and less often, in the end every 100 ms, and so may never meet the short moment
    /// between two transactions of a busy writer. It is kept to this, and <see cref="Begin"/> asks again.
    /// </summary>
    private const int PatienceOfTheEngineMs = 2;

    private readonly List<Statement> _statements = [];
    private readonly RecordOptions _options;
    private readonly Statement _begin;
    private readonly Statement _commit;
    private readonly Statement _rollback;

    private RecordConnection(SqliteConnection connection, RecordOptions options)
    {
        (Connection, _options) = (connection, options);
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
        var connection = new RecordConnection(Open(file, SqliteOpenMode.ReadWriteCreate, options), options);
        try
        {
            connection.Once("PRAGMA journal_mode = WAL");
            connection.Once(durable ? "PRAGMA synchronous = FULL" : "PRAGMA synchronous = NORMAL");
            connection.Set("journal_size_limit", options.LogKeptBytes);
            if (options.MostPages is { } pages) connection.Set("max_page_count", pages);
            raw.sqlite3_busy_timeout(connection.Handle, PatienceOfTheEngineMs);
            return connection;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    /// <summary>A connection that only reads a file that is there. To be closed soon: while it reads, the write-ahead log cannot shrink.</summary>
    public static RecordConnection ForReading(string file, RecordOptions options) =>
        new(Open(file, SqliteOpenMode.ReadOnly, options), options);

    /// <summary>A statement that lives as long as the connection.</summary>
    public Statement Prepare(string sql)
    {
        var statement = new Statement(Handle, sql);
        _statements.Add(statement);
        return statement;
    }

    /// <summary>From here on until it is closed, this connection sees the record as it is now, whatever is written meanwhile.</summary>
    public void HoldMoment() => Once("BEGIN DEFERRED");

    /// <summary>Runs a statement that is needed once; what it returns is left.</summary>
    public void Once(string sql)
    {
        using var statement = new Statement(Handle, sql);
        while (statement.Next()) { }
    }

    /// <summary>Sets a setting of the engine or of the file.</summary>
    public void Set(string pragma, long number) => Once(string.Create(CultureInfo.InvariantCulture, $"PRAGMA {pragma} = {number}"));

    /// <summary>The one whole number that a query returns.</summary>
    public long Number(string sql)
    {
        using var statement = new Statement(Handle, sql);
        return statement.Next() ? statement.Int(0) : throw new InvalidOperationException($"'{sql}' returned nothing");
    }

    /// <summary>Begins an immediate transaction; waits for other writers as long as the options say.</summary>
    public void Begin()
    {
        var asked = _options.Clock.GetTimestamp();
        while (!_begin.TryRun())
        {
            if (_options.Clock.GetElapsedTime(asked) < _options.LongestWait) continue;
            _begin.Run();
            return;
        }
    }

    public void Commit() => _commit.Run();

    /// <summary>Undoes what is open; nothing when the engine has done so already, as it does when the disk is full.</summary>
    public void Rollback()
    {
        if (raw.sqlite3_get_autocommit(Handle) == 0) _rollback.Run();
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
