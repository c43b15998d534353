using System.Collections.Immutable;
using EolSequencer.Records.Chain;

namespace EolSequencer.Records.Verify;

/// <summary>What walking a record came to.</summary>
/// <param name="Findings">Everything that is not as it was written; the first thousand of it.</param>
/// <param name="FindingCount">How many there are in all.</param>
/// <param name="Unfinished">Runs that began and did not end: under way, or broken off by a crash. No fault in itself, but a missing tail of such a run would not be seen.</param>
/// <param name="Head">Where the ledger stands; compared with a copy kept elsewhere, it shows that nothing was cut off.</param>
/// <param name="Runs">Runs walked.</param>
/// <param name="Events">Events walked.</param>
public sealed record VerifyReport(
    ImmutableArray<Finding> Findings, long FindingCount, ImmutableArray<string> Unfinished, LedgerHead Head, long Runs, long Events)
{
    /// <summary>True when everything is as it was written.</summary>
    public bool IsWhole => FindingCount == 0;
}
