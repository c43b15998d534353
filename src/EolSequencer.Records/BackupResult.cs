using EolSequencer.Records.Chain;
using EolSequencer.Records.Verify;

namespace EolSequencer.Records;

/// <summary>A copy of the record that has been checked, or why there is none.</summary>
public abstract record BackupResult
{
    private BackupResult() { }

    /// <summary>The copy is there.</summary>
    /// <param name="File">Where.</param>
    /// <param name="Head">Where its ledger stands.</param>
    /// <param name="Report">What walking the copy found; a damaged record gives a copy as damaged.</param>
    public sealed record Made(string File, LedgerHead Head, VerifyReport Report) : BackupResult;

    /// <summary>There is none.</summary>
    public sealed record Refused(string Why) : BackupResult;
}
