using EolSequencer.Records.Administration;
using EolSequencer.Records.Chain;
using EolSequencer.Records.Sqlite;

namespace EolSequencer.Records.Verify;

/// <summary>Walks the ledger: numbers, links, what the entries say, and the seal of each entry that has one.</summary>
internal sealed class LedgerCheck(RecordConnection connection, FindingList findings)
{
    private readonly Statement _entries = connection.Prepare(
        """
        SELECT ledger.n, ledger.hash, ledger.bytes, seal.signature, station_key.public
        FROM ledger LEFT JOIN seal ON seal.ledger = ledger.n LEFT JOIN station_key ON station_key.id = seal.key
        WHERE ledger.n > ? ORDER BY ledger.n
        """);

    private readonly Statement _linkOf = connection.Prepare("SELECT hash FROM ledger WHERE n = ?");
    private readonly ChainReader _chain = new();
    private LedgerPicture _picture = new(isWhole: true);

    /// <summary>Walks from the entry behind <paramref name="after"/> to the end; 0 walks all.</summary>
    public LedgerPicture Walk(long after)
    {
        _picture = new LedgerPicture(isWhole: after == 0);
        _chain.Begin(LinkOf(after));
        var due = after + 1;
        _entries.Int(1, after);
        while (_entries.Next())
        {
            var n = _entries.Int(0);
            var followsGap = n != due;
            if (followsGap) findings.Add(FindingKind.Ledger, Missing(due, n - 1), number: due);
            due = n + 1;
            CheckEntry(n, followsGap);
        }

        foreach (var n in LooseSeals(after)) findings.Add(FindingKind.Seal, "there is no such entry, or none that has a seal", number: n);
        return _picture;
    }

    private static string Missing(long first, long last) => first == last ? "it is missing" : $"it and all up to {last} are missing";

    private void CheckEntry(long n, bool followsGap)
    {
        var link = _entries.Blob(1);
        var follows = _chain.Next(_entries.Blob(2), link);
        if (!follows && !followsGap) findings.Add(FindingKind.Ledger, "its bytes and the link before do not give its link", number: n);
        _picture.Head = new LedgerHead(n, Convert.ToHexStringLower(link));
        try
        {
            var entry = LedgerForm.Read(_entries.Blob(2).ToArray());
            if (entry.N != n) findings.Add(FindingKind.Ledger, $"its bytes say that it is entry {entry.N}", number: n);
            Note(entry, n);
            CheckSeal(entry, n);
        }
        catch (FormatException fault)
        {
            findings.Add(FindingKind.Ledger, $"it cannot be read: {fault.Message}", number: n);
        }
    }

    private void Note(LedgerEntry entry, long n)
    {
        switch (entry)
        {
            case LedgerEntry.RunBegun begun when !_picture.Begun.TryAdd(begun.Run, begun):
                findings.Add(FindingKind.Ledger, $"run {begun.Run} has begun before", number: n);
                break;
            case LedgerEntry.RunEnded ended when !_picture.Ended.TryAdd(ended.Run, ended):
                findings.Add(FindingKind.Ledger, $"run {ended.Run} has ended before", number: n);
                break;
            case LedgerEntry.Act { What: KeyMade made }:
                _picture.Keys.Add(made.Public);
                break;
            case LedgerEntry.Act act:
                ActFold.Apply(act.What, act.By, _picture.Tables);
                break;
        }
    }

    private void CheckSeal(LedgerEntry entry, long n)
    {
        if (!entry.IsSealed) return;
        var run = (entry as LedgerEntry.RunEnded)?.Run;
        if (_entries.IsNull(3))
        {
            findings.Add(FindingKind.Seal, run is null ? "it is missing" : $"it is missing: run {run} is not sealed", number: n);
        }
        else if (_entries.IsNull(4))
        {
            findings.Add(FindingKind.Seal, "the record does not know the key it was made with", number: n);
        }
        else if (!StationKey.IsSeal(_entries.Blob(4), _entries.Blob(1), _entries.Blob(3)))
        {
            findings.Add(FindingKind.Seal, run is null ? "it does not fit" : $"it does not fit: run {run} is not sealed", number: n);
        }
    }

    private IEnumerable<long> LooseSeals(long after)
    {
        var loose = connection.Prepare("SELECT seal.ledger FROM seal LEFT JOIN ledger ON ledger.n = seal.ledger WHERE seal.ledger > ? AND ledger.n IS NULL").Int(1, after);
        while (loose.Next()) yield return loose.Int(0);
    }

    private byte[] LinkOf(long n)
    {
        if (!_linkOf.Int(1, n).Next()) return [];
        var link = _linkOf.Blob(0).ToArray();
        _linkOf.Reset();
        return link;
    }
}
