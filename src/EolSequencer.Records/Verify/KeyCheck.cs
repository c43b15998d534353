using EolSequencer.Records.Chain;
using EolSequencer.Records.Sqlite;

namespace EolSequencer.Records.Verify;

/// <summary>Every public key is one whose making stands in the ledger.</summary>
internal static class KeyCheck
{
    public static void Walk(RecordConnection connection, LedgerPicture ledger, FindingList findings)
    {
        var keys = connection.Prepare("SELECT id, public FROM station_key ORDER BY id");
        while (keys.Next())
        {
            if (ledger.Keys.Contains(StationKey.FingerprintOf(keys.Blob(1)))) continue;
            findings.Add(FindingKind.Key, $"the ledger does not know station key {keys.Int(0)}");
        }
    }
}
