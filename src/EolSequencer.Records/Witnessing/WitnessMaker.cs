using System.Collections.Immutable;
using EolSequencer.Records.Sqlite;

namespace EolSequencer.Records.Witnessing;

/// <summary>Makes a witness of a ledger as it is.</summary>
internal static class WitnessMaker
{
    /// <summary>A line for entry 1, one for each full number of entries, and one for the last entry; none of an empty ledger.</summary>
    /// <param name="every">Entries of a range, from 1.</param>
    public static LedgerWitness? Of(RecordConnection connection, long every)
    {
        var lines = ImmutableArray.CreateBuilder<WitnessLine>();
        var entries = connection.Prepare("SELECT n, hash FROM ledger WHERE n = 1 OR n % ? = 0 OR n = (SELECT max(n) FROM ledger) ORDER BY n").Int(1, every);
        while (entries.Next())
        {
            lines.Add(new WitnessLine(lines.Count == 0 ? 1 : lines[^1].To + 1, entries.Int(0), Convert.ToHexStringLower(entries.Blob(1))));
        }

        return lines.Count == 0 ? null : new LedgerWitness(lines.ToImmutable());
    }
}
