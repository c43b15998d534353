using EolSequencer.Records.Sqlite;
using EolSequencer.Records.Writing;

namespace EolSequencer.Records.Verify;

/// <summary>Every file's bytes have the hash they are kept under.</summary>
internal static class SourceCheck
{
    /// <summary>Gives the hashes under which files are kept.</summary>
    public static HashSet<string> Walk(RecordConnection connection, FindingList findings)
    {
        var kept = new HashSet<string>();
        var sources = connection.Prepare("SELECT hash, bytes FROM source ORDER BY hash");
        while (sources.Next())
        {
            var hash = sources.Text(0);
            kept.Add(hash);
            if (SourceBytes.HashOf(sources.Blob(1)) != hash) findings.Add(FindingKind.Source, $"the file kept as {hash} has been changed");
        }

        return kept;
    }
}
