using EolSequencer.Records.Chain;
using EolSequencer.Records.Sqlite;
using EolSequencer.Records.Verify;

namespace EolSequencer.Records.Witnessing;

/// <summary>Compares a ledger with what a witness saw of it.</summary>
internal sealed class WitnessCheck(RecordConnection connection, FindingList findings)
{
    private readonly Statement _linkOf = connection.Prepare("SELECT hash FROM ledger WHERE n = ?");

    /// <summary>
    /// Reports the first range that is not as it was seen, and a missing end. A link depends on all entries before it, so behind the
    /// first difference there is nothing more to learn.
    /// </summary>
    public void Compare(LedgerWitness witness)
    {
        var end = LedgerReader.Head(connection).Count;
        if (witness.UpTo > end) findings.Add(FindingKind.Witness, $"the end of the ledger is cut off: the witness saw entry {witness.UpTo}, the ledger ends at entry {end}");

        WitnessLine? fits = null;
        foreach (var line in witness.Lines.TakeWhile(line => line.To <= end))
        {
            if (LinkOf(line.To) is { } link && link.StartsWith(line.Hash, StringComparison.Ordinal)) fits = line;
            else
            {
                findings.Add(FindingKind.Witness, Differs(line, fits));
                return;
            }
        }
    }

    private static string Differs(WitnessLine line, WitnessLine? fits) => (fits, line.To) switch
    {
        (null, 1) => "the witness is one of another data folder, or the ledger was written anew from its first entry",
        (null, var to) => $"the ledger was rewritten at entry {to} or before it, or the witness is one of another data folder",
        ({ To: var good }, var to) => $"the ledger was rewritten: up to entry {good} it is as the witness saw it, but not up to entry {to}",
    };

    private string? LinkOf(long n)
    {
        if (!_linkOf.Int(1, n).Next()) return null;
        var link = Convert.ToHexStringLower(_linkOf.Blob(0));
        _linkOf.Reset();
        return link;
    }
}
