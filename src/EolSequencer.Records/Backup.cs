using Dapper;
using EolSequencer.Records.Sqlite;
using EolSequencer.Records.Verify;
using Microsoft.Data.Sqlite;

namespace EolSequencer.Records;

/// <summary>
/// Copies a record through the database engine. The database file alone lacks whatever still stands in the write-ahead log,
/// and nobody would see it from the copy.
/// </summary>
internal static class Backup
{
    public static BackupResult Make(RecordFiles files, RecordOptions options, string file)
    {
        var target = Path.GetFullPath(file);
        if (Path.Exists(target)) return new BackupResult.Refused($"{target} is there already; name a new file");
        try
        {
            using (var source = RecordConnection.ForReading(files.Database, options))
            {
                source.Connection.Execute("VACUUM INTO @target", new { target });
            }

            using var copy = RecordConnection.ForReading(target, options);
            var report = new RecordVerifier(copy).VerifyAll();
            return new BackupResult.Made(target, report.Head, report);
        }
        catch (SqliteException fault)
        {
            return new BackupResult.Refused($"the backup failed: {RecordTrouble.Describe(fault, target)}");
        }
    }
}
