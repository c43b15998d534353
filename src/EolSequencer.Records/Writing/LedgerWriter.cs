using EolSequencer.Records.Chain;
using EolSequencer.Records.Sqlite;

namespace EolSequencer.Records.Writing;

/// <summary>Appends to the ledger, inside the caller's immediate transaction: the head is read again every time, because any process may have moved it.</summary>
internal sealed class LedgerWriter(RecordConnection connection)
{
    private readonly Statement _head = connection.Prepare("SELECT n, hash FROM ledger ORDER BY n DESC LIMIT 1");
    private readonly Statement _add = connection.Prepare("INSERT INTO ledger (n, hash, bytes) VALUES (?, ?, ?)");
    private readonly Statement _seal = connection.Prepare("INSERT INTO seal (ledger, key, signature) VALUES (?, ?, ?)");
    private readonly ChainWriter _chain = new();

    /// <summary>Appends one entry.</summary>
    /// <param name="make">Makes the entry from its number.</param>
    /// <param name="key">Seals it, unless it is of a kind that has no seal.</param>
    public void Append(Func<long, LedgerEntry> make, SealingKey key)
    {
        var entry = make(GoToHead() + 1);
        LedgerForm.Write(_chain.Begin(), entry);
        _chain.End();
        _add.Int(1, entry.N).Blob(2, _chain.Hash).Blob(3, _chain.Bytes).Run();
        if (entry.IsSealed) _seal.Int(1, entry.N).Int(2, key.Id).Blob(3, key.Key.Seal(_chain.Hash)).Run();
    }

    private long GoToHead()
    {
        var n = 0L;
        if (_head.Next())
        {
            n = _head.Int(0);
            _chain.GoOnFrom(_head.Blob(1));
            _head.Reset();
        }
        else
        {
            _chain.GoOnFrom(stackalloc byte[LinkBuffer.HashSize]);
        }

        return n;
    }
}
