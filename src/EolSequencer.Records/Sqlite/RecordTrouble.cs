using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace EolSequencer.Records.Sqlite;

/// <summary>What went wrong with the database, in words for people.</summary>
internal static class RecordTrouble
{
    public static string Describe(SqliteException fault, string file) => fault.SqliteErrorCode switch
    {
        raw.SQLITE_FULL => $"the disk is full ({file})",
        raw.SQLITE_READONLY => $"{file} may not be written",
        raw.SQLITE_BUSY or raw.SQLITE_LOCKED => $"another program keeps {file} for itself",
        raw.SQLITE_IOERR => $"the disk reports a fault at {file} (code {fault.SqliteExtendedErrorCode})",
        raw.SQLITE_CORRUPT => $"{file} is damaged; put back the last backup, keep this file for the inquiry",
        raw.SQLITE_NOTADB => $"{file} is no record: it is damaged from its first bytes on, or another kind of file",
        raw.SQLITE_CANTOPEN => $"{file} cannot be opened",
        raw.SQLITE_PERM or raw.SQLITE_AUTH => $"this account has no right to {file}",
        _ => $"{file}: {fault.Message}",
    };
}
