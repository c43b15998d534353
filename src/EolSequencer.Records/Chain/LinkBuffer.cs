using System.Buffers;
using System.Security.Cryptography;

namespace EolSequencer.Records.Chain;

/// <summary>The hash before and, right behind it, the bytes of an entry: one piece of memory, so that a link is one call.</summary>
internal sealed class LinkBuffer : IBufferWriter<byte>
{
    /// <summary>Bytes of a SHA-256.</summary>
    public const int HashSize = 32;

    private byte[] _memory = new byte[4096];
    private int _end = HashSize;

    /// <summary>The hash before; a chain begins with zeros.</summary>
    public Span<byte> Previous => _memory.AsSpan(0, HashSize);

    /// <summary>The bytes of the entry.</summary>
    public ReadOnlySpan<byte> Bytes => _memory.AsSpan(HashSize, _end - HashSize);

    /// <summary>Empties the entry; the hash before stays.</summary>
    public void Clear() => _end = HashSize;

    /// <summary>The link: SHA-256 over both.</summary>
    public void Link(Span<byte> hash) => SHA256.HashData(_memory.AsSpan(0, _end), hash);

    public void Advance(int count) => _end += count;

    public Memory<byte> GetMemory(int sizeHint = 0)
    {
        MakeRoom(sizeHint);
        return _memory.AsMemory(_end);
    }

    public Span<byte> GetSpan(int sizeHint = 0)
    {
        MakeRoom(sizeHint);
        return _memory.AsSpan(_end);
    }

    private void MakeRoom(int sizeHint)
    {
        var wanted = _end + Math.Max(sizeHint, 256);
        if (wanted > _memory.Length) Array.Resize(ref _memory, Math.Max(wanted, 2 * _memory.Length));
    }
}
