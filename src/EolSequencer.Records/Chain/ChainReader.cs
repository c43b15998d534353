using System.Buffers;

namespace EolSequencer.Records.Chain;

/// <summary>
/// Follows a chain that was kept. It goes on from the link it finds, whether right or wrong, so that one change is found
/// where it is and not in everything behind it.
/// </summary>
internal sealed class ChainReader
{
    private readonly LinkBuffer _buffer = new();
    private readonly byte[] _hash = new byte[LinkBuffer.HashSize];

    /// <summary>Begins a chain, or goes on behind the entry with this link.</summary>
    public void Begin(ReadOnlySpan<byte> head = default)
    {
        _buffer.Previous.Clear();
        head.CopyTo(_buffer.Previous);
    }

    /// <summary>The link found last.</summary>
    public ReadOnlySpan<byte> Head => _buffer.Previous;

    /// <summary>Takes the next entry. True when its link is the one that follows from its bytes and the link before.</summary>
    public bool Next(ReadOnlySpan<byte> bytes, ReadOnlySpan<byte> link)
    {
        _buffer.Clear();
        _buffer.Write(bytes);
        _buffer.Link(_hash);
        var follows = link.SequenceEqual(_hash);
        if (link.Length == LinkBuffer.HashSize) link.CopyTo(_buffer.Previous);
        return follows;
    }
}
