using EolSequencer.Records.Administration;
using EolSequencer.Records.Chain;

namespace EolSequencer.Records.Writing;

/// <summary>Appends acts to the ledger and folds them into the tables, inside the caller's immediate transaction.</summary>
internal sealed class ActWriter(LedgerWriter ledger, SealingKey key)
{
    /// <param name="by">Badge of the person; null: the program itself.</param>
    public void Append(Act act, string? by, DateTimeOffset now, IActTables tables)
    {
        ledger.Append(n => new LedgerEntry.Act(n, now, by, act), key);
        ActFold.Apply(act, by, tables);
    }
}
