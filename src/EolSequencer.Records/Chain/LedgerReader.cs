using EolSequencer.Records.Sqlite;

namespace EolSequencer.Records.Chain;

/// <summary>Reads where the ledger stands.</summary>
internal static class LedgerReader
{
    public static LedgerHead Head(RecordConnection connection)
    {
        var head = connection.Prepare("SELECT n, hash FROM ledger ORDER BY n DESC LIMIT 1");
        if (!head.Next()) return new LedgerHead(0, new string('0', 2 * LinkBuffer.HashSize));
        var found = new LedgerHead(head.Int(0), Convert.ToHexStringLower(head.Blob(1)));
        head.Reset();
        return found;
    }
}
