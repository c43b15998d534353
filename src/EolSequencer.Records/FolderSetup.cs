using System.Globalization;
using EolSequencer.Records.Administration;
using EolSequencer.Records.Chain;
using EolSequencer.Records.Sqlite;
using EolSequencer.Records.Writing;

namespace EolSequencer.Records;

/// <summary>Makes what a data folder needs, inside one transaction; every such act stands in the ledger.</summary>
internal sealed class FolderSetup(RecordConnection connection, RecordFiles files, TimeProvider time)
{
    private bool _isNewSchema;

    /// <summary>Makes or upgrades the tables where need be. Returns the state found.</summary>
    public SchemaState Upgrade()
    {
        var state = RecordSchema.StateOf(connection);
        _isNewSchema = state is SchemaState.Nothing or SchemaState.Older;
        if (_isNewSchema) RecordSchema.Upgrade(connection, time);
        return state;
    }

    /// <summary>Makes the key known to the record if it is not, and gives its number there.</summary>
    public long Register(string pem)
    {
        using var key = StationKey.FromPem(pem);
        var ledger = new LedgerWriter(connection);
        var id = NumberOf(key);
        if (id is null)
        {
            id = Add(key);
            Append(ledger, new SealingKey(id.Value, key), new KeyMade(key.Fingerprint, Path.GetFileName(files.Key)));
        }

        if (_isNewSchema)
        {
            Append(ledger, new SealingKey(id.Value, key), new SchemaMade(RecordSchema.Newest.ToString(CultureInfo.InvariantCulture)));
        }

        return id.Value;
    }

    private void Append(LedgerWriter ledger, SealingKey key, Act act) =>
        ledger.Append(n => new LedgerEntry.Act(n, time.GetUtcNow(), null, act), key);

    private long? NumberOf(StationKey key)
    {
        var find = connection.Prepare("SELECT id FROM station_key WHERE public = ?").Blob(1, key.Public);
        if (!find.Next()) return null;
        var id = find.Int(0);
        find.Reset();
        return id;
    }

    private long Add(StationKey key)
    {
        connection.Prepare("INSERT INTO station_key (public) VALUES (?)").Blob(1, key.Public).Run();
        return NumberOf(key) ?? throw new InvalidOperationException("the key just added is not there");
    }
}
