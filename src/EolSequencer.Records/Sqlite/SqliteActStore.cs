using EolSequencer.Records.Administration;
using EolSequencer.Records.Writing;
using Microsoft.Data.Sqlite;

namespace EolSequencer.Records.Sqlite;

/// <summary>Acts of a data folder: each turn is one durable transaction on a connection of its own.</summary>
/// <param name="key">Opens the sealing key; the turn closes it.</param>
internal sealed class SqliteActStore(RecordFiles files, RecordOptions options, TimeProvider time, Func<SealingKey> key) : IActStore
{
    private readonly SqliteActReader _reader = new(files, options);

    public T Read<T>(Func<IActView, T> read) => _reader.Read(read);

    public Outcome<T> Change<T>(Func<IActTurn, Outcome<T>> decide)
        where T : class
    {
        try
        {
            using var connection = RecordConnection.ForWriting(files.Database, durable: true, options);
            var sealing = key();
            using (sealing.Key)
            {
                return Change(connection, sealing, decide);
            }
        }
        catch (SqliteException fault)
        {
            throw new RecordFault($"cannot write records: {RecordTrouble.Describe(fault, files.Database)}", fault);
        }
        catch (FormatException fault)
        {
            throw new RecordFault($"cannot write records: {files.Database} holds what it should not ({fault.Message}); run verify", fault);
        }
    }

    private Outcome<T> Change<T>(RecordConnection connection, SealingKey sealing, Func<IActTurn, Outcome<T>> decide)
        where T : class
    {
        connection.Begin();
        try
        {
            var result = decide(new SqliteTurn(connection, sealing, time.GetUtcNow()));
            if (result.IsDone) connection.Commit();
            return result;
        }
        finally
        {
            connection.Rollback();
        }
    }
}
