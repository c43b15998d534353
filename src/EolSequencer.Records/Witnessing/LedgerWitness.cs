using System.Collections.Immutable;

namespace EolSequencer.Records.Witnessing;

/// <summary>
/// Hashes of a ledger, to be kept outside its data folder: they show later that its end was not cut off and that it was not
/// written anew. The line of entry 1 tells folders apart, because no two have the same key and the same beginning.
/// </summary>
/// <param name="Lines">In the order of the entries, at least one.</param>
public sealed record LedgerWitness(ImmutableArray<WitnessLine> Lines)
{
    /// <summary>The last entry that it answers for.</summary>
    public long UpTo => Lines[^1].To;
}
