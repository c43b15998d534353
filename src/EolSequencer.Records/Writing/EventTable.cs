using EolSequencer.Records.Sqlite;

namespace EolSequencer.Records.Writing;

/// <summary>Writes events as the bytes that were hashed, each with its link.</summary>
internal sealed class EventTable(RecordConnection connection)
{
    private readonly Statement _add = connection.Prepare("INSERT INTO event (id, hash, bytes) VALUES (?, ?, ?)");

    private readonly Statement _last = connection.Prepare("SELECT id, hash FROM event WHERE id BETWEEN ? AND ? ORDER BY id DESC LIMIT 1");

    public void Add(long key, ReadOnlySpan<byte> hash, ReadOnlySpan<byte> bytes) => _add.Int(1, key).Blob(2, hash).Blob(3, bytes).Run();

    /// <summary>Number and link of a run's last event; a run has one at least.</summary>
    public (int N, byte[] Link) Last(long run)
    {
        _last.Int(1, EventKey.Before(run)).Int(2, EventKey.Last(run)).Next();
        var last = (EventKey.NumberOf(_last.Int(0)), _last.Blob(1).ToArray());
        _last.Reset();
        return last;
    }
}
