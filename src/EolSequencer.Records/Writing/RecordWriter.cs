using EolSequencer.Records.Sqlite;

namespace EolSequencer.Records.Writing;

/// <summary>Everything one thread needs to write runs: its connection and the prepared statements on it.</summary>
internal sealed class RecordWriter : IDisposable
{
    private readonly RecordConnection _connection;
    private readonly string _file;

    public RecordWriter(string file, bool durable, SealingKey key, RecordOptions options)
    {
        _file = file;
        Key = key;
        _connection = RecordConnection.ForWriting(file, durable, options);
        Events = new EventTable(_connection);
        Criteria = new CriterionTable(_connection);
        Parts = new PartSerialTable(_connection);
        Runs = new RunTable(_connection);
        Sources = new SourceTable(_connection);
        Series = new SeriesTable(_connection);
        Ledger = new LedgerWriter(_connection);
        Arrivals = new ArrivalWriter(_connection, Ledger, key);
        Findings = new RunFindingWriter(_connection, Ledger, key);
    }

    public SealingKey Key { get; }

    public EventTable Events { get; }

    public CriterionTable Criteria { get; }

    public PartSerialTable Parts { get; }

    public RunTable Runs { get; }

    public SourceTable Sources { get; }

    public SeriesTable Series { get; }

    public LedgerWriter Ledger { get; }

    public ArrivalWriter Arrivals { get; }

    public RunFindingWriter Findings { get; }

    public void Begin() => _connection.Begin();

    public void Commit()
    {
        _connection.Commit();
        Sources.Committed();
    }

    public void Rollback()
    {
        Sources.RolledBack();
        _connection.Rollback();
    }

    /// <summary>What people are told when a transaction failed.</summary>
    public string Describe(Microsoft.Data.Sqlite.SqliteException fault) => $"cannot write records: {RecordTrouble.Describe(fault, _file)}";

    public void Dispose()
    {
        Key.Key.Dispose();
        _connection.Dispose();
    }
}
