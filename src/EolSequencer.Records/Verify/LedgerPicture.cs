using EolSequencer.Records.Administration;
using EolSequencer.Records.Chain;

namespace EolSequencer.Records.Verify;

/// <summary>What the ledger says.</summary>
/// <param name="isWhole">False when only its end was walked: then a run that is not in it may be an older one.</param>
internal sealed class LedgerPicture(bool isWhole)
{
    public bool IsWhole => isWhole;

    /// <summary>The beginning of each run, by its id.</summary>
    public Dictionary<string, LedgerEntry.RunBegun> Begun { get; } = [];

    /// <summary>The end of each run that has one.</summary>
    public Dictionary<string, LedgerEntry.RunEnded> Ended { get; } = [];

    /// <summary>Fingerprints of the keys that were made.</summary>
    public HashSet<string> Keys { get; } = [];

    /// <summary>What its acts come to.</summary>
    public MemoryTables Tables { get; } = new();

    public LedgerHead Head { get; set; } = new(0, new string('0', 2 * LinkBuffer.HashSize));
}
