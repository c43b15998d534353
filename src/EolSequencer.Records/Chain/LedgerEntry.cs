using EolSequencer.Model.Judging;

namespace EolSequencer.Records.Chain;

/// <summary>An entry of the ledger: the chain over everything in a data folder. Numbered from 1 without a gap.</summary>
internal abstract record LedgerEntry(long N)
{
    /// <summary>A run began.</summary>
    /// <param name="First">Link of its first event, hex, lower case.</param>
    public sealed record RunBegun(long N, string Run, string First) : LedgerEntry(N);

    /// <summary>A run ended; sealed.</summary>
    /// <param name="Last">Link of its last event, hex, lower case.</param>
    public sealed record RunEnded(long N, string Run, string Last, int Events, Verdict Verdict) : LedgerEntry(N);

    /// <summary>An act of administration; sealed.</summary>
    /// <param name="By">Badge of the person; null: the program itself.</param>
    /// <param name="What">What was done.</param>
    public sealed record Act(long N, DateTimeOffset Wall, string? By, Administration.Act What) : LedgerEntry(N);

    /// <summary>Whether a seal stands beside it.</summary>
    public bool IsSealed => this is not RunBegun;
}
