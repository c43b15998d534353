using EolSequencer.Records.Administration;

namespace EolSequencer.Records.Sqlite;

/// <summary>Reads what acts have come to; each call on a connection of its own, as of one moment.</summary>
internal sealed class SqliteActReader(RecordFiles files, RecordOptions options) : IActReader
{
    public T Read<T>(Func<IActView, T> read) => files.Read(options, connection =>
    {
        connection.HoldMoment();
        return read(new SqliteTables(connection));
    });
}
