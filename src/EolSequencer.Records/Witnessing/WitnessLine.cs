namespace EolSequencer.Records.Witnessing;

/// <summary>What somebody outside saw of a ledger once.</summary>
/// <param name="From">The first entry that the line before does not answer for, from 1.</param>
/// <param name="To">The entry that was the last one then.</param>
/// <param name="Hash">Link of that entry, hex, lower case: all 64 digits, or the first 32 or more as on paper. It depends on every entry before.</param>
public sealed record WitnessLine(long From, long To, string Hash);
