using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;

namespace EolSequencer.Language.Expressions;

/// <summary>A SHA-256 over parts that cannot run into each other: each is preceded by its length.</summary>
internal sealed class Digest
{
    private readonly MemoryStream _parts = new();

    private Digest() { }

    public static byte[] Of(Action<Digest> add)
    {
        var digest = new Digest();
        add(digest);
        return SHA256.HashData(digest._parts.GetBuffer().AsSpan(0, (int)digest._parts.Length));
    }

    public void Bytes(ReadOnlySpan<byte> part)
    {
        Span<byte> length = stackalloc byte[4];
        BinaryPrimitives.WriteInt32LittleEndian(length, part.Length);
        _parts.Write(length);
        _parts.Write(part);
    }

    public void Text(string part) => Bytes(Encoding.UTF8.GetBytes(part));

    public void Flag(bool part) => Bytes([part ? (byte)1 : (byte)0]);

    public void Texts(IEnumerable<string> parts)
    {
        var count = 0;
        foreach (var part in parts)
        {
            Text(part);
            count++;
        }

        Bytes([(byte)count, (byte)(count >> 8)]);
    }
}
