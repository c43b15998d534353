using EolSequencer.Records.Canonical;
using EolSequencer.Records.Sqlite;

namespace EolSequencer.Records.Writing;

/// <summary>Writes the compressed points of a series beside the event that has their hash.</summary>
internal sealed class SeriesTable(RecordConnection connection)
{
    private readonly Statement _add = connection.Prepare("INSERT INTO series (id, block) VALUES (?, ?)");

    public void Add(long key, SeriesContent content) => _add.Int(1, key).Blob(2, content.Compress()).Run();
}
