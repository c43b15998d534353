using EolSequencer.Records.Sqlite;

namespace EolSequencer.Records.Verify;

/// <summary>What belongs to no run that is there, and runs of the ledger that are not there.</summary>
internal static class OrphanCheck
{
    public static void Walk(RecordConnection connection, LedgerPicture ledger, HashSet<string> runs, FindingList findings)
    {
        foreach (var run in ledger.Begun.Keys.Concat(ledger.Ended.Keys).Distinct().Where(run => !runs.Contains(run)))
        {
            findings.Add(FindingKind.Run, "the ledger knows it, and it is missing", run);
        }

        Walk(connection, FindingKind.Event, "event", "id >> 20", "events", findings);
        Walk(connection, FindingKind.Series, "series", "id >> 20", "series", findings);
        Walk(connection, FindingKind.Table, "criterion", "id >> 20", "criteria", findings);
        Walk(connection, FindingKind.Table, "part_serial", "id >> 20", "serials of parts", findings);
    }

    private static void Walk(RecordConnection connection, FindingKind kind, string table, string row, string things, FindingList findings)
    {
        var orphans = connection.Prepare($"SELECT {row}, count(*) FROM {table} WHERE {row} NOT IN (SELECT id FROM run) GROUP BY 1 ORDER BY 1");
        while (orphans.Next()) findings.Add(kind, $"{orphans.Int(1)} {things} belong to run row {orphans.Int(0)}, which is not there");
    }
}
