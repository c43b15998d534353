using EolSequencer.Records.Sqlite;
using Microsoft.Data.Sqlite;

namespace EolSequencer.Records;

/// <summary>The record could not be read: damaged, taken away, kept by another program. The message says which, for people.</summary>
public sealed class RecordFault(string message, Exception? cause = null) : Exception(message, cause)
{
    /// <summary>Reads, and names trouble of the database or of what is in it.</summary>
    internal static T Guard<T>(RecordFiles files, Func<T> read)
    {
        try
        {
            return read();
        }
        catch (SqliteException fault)
        {
            throw new RecordFault($"cannot read records: {RecordTrouble.Describe(fault, files.Database)}", fault);
        }
        catch (FormatException fault)
        {
            throw new RecordFault($"cannot read records: {files.Database} holds what it should not ({fault.Message}); run verify", fault);
        }
    }
}
