using EolSequencer.Model.Sequences;
using EolSequencer.Records.Administration;
using EolSequencer.Records.Writing;

namespace EolSequencer.Records.Sqlite;

/// <summary>A turn inside an immediate transaction that the caller has open.</summary>
internal sealed class SqliteTurn(RecordConnection connection, SealingKey key, DateTimeOffset now) : SqliteTables(connection), IActTurn
{
    private readonly RecordConnection _connection = connection;
    private readonly ActWriter _acts = new(new LedgerWriter(connection), key);

    public DateTimeOffset Now => now;

    public void Append(Act act, string? by) => _acts.Append(act, by, now, this);

    public void KeepSource(SourceCopy source) => new SourceTable(_connection).Add(source);

    public void KeepSecretHash(string badge, string hash) => _connection
        .Prepare("INSERT INTO person_secret (badge, hash) VALUES (?, ?) ON CONFLICT (badge) DO UPDATE SET hash = excluded.hash")
        .Text(1, badge).Text(2, hash).Run();
}
