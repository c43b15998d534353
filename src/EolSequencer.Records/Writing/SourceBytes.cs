using System.Security.Cryptography;
using System.Text;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Records.Writing;

/// <summary>The bytes of a file an author wrote, from its text and back. The hash tells whether the file began with a byte order mark.</summary>
internal static class SourceBytes
{
    private static readonly byte[] Mark = [0xEF, 0xBB, 0xBF];

    /// <summary>The bytes that have the source's hash; a text with another hash is a broken assumption and throws.</summary>
    public static byte[] Of(SourceCopy source)
    {
        var bytes = Encoding.UTF8.GetBytes(source.Text);
        if (HashOf(bytes) == source.Hash) return bytes;
        bytes = [.. Mark, .. bytes];
        return HashOf(bytes) == source.Hash ? bytes : throw new ArgumentException($"the text of {source.Path} does not have the hash {source.Hash}");
    }

    public static string TextOf(ReadOnlySpan<byte> bytes) => Encoding.UTF8.GetString(bytes.StartsWith(Mark) ? bytes[Mark.Length..] : bytes);

    /// <summary>SHA-256, hex, lower case.</summary>
    public static string HashOf(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));
}
