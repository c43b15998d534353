using System.Security.Cryptography;
using System.Text;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Records.SequenceControl;

/// <summary>One hash for everything that a sequence was made from: another file, another path or another byte is another hash.</summary>
public static class ContentHash
{
    /// <summary>
    /// SHA-256, hex, lower case, over one entry for each file in the order of the paths' bytes: hash of the file, two blanks, its path, a zero byte.
    /// So it is the hash of what <c>sha256sum -z</c> prints for the files of the plant.
    /// </summary>
    /// <param name="sources">Every file that the checked sequence was made from.</param>
    public static string Of(IEnumerable<SourceCopy> sources)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var entries = sources.Select(source => (Path: Encoding.UTF8.GetBytes(source.Path), source.Hash)).ToList();
        entries.Sort((one, other) => one.Path.AsSpan().SequenceCompareTo(other.Path));
        foreach (var (path, content) in entries)
        {
            hash.AppendData(Encoding.ASCII.GetBytes(content + "  "));
            hash.AppendData(path);
            hash.AppendData([0]);
        }

        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }
}
