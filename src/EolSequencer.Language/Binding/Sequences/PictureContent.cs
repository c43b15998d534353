using System.Text;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Whether a file is the picture that its ending says: a screen would show nothing else than an empty frame.</summary>
/// <remarks>Signatures: PNG (ISO/IEC 15948), JPEG (ISO/IEC 10918-1, start of image), WebP (RFC 9649); SVG by its root element.</remarks>
internal static class PictureContent
{
    private const int MostBytes = 4096;

    /// <summary>Also true for a file that cannot be read now: that is found when it is shown.</summary>
    public static bool IsOf(string path)
    {
        var head = new byte[MostBytes];
        int read;
        try
        {
            using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            read = file.ReadAtLeast(head, head.Length, throwOnEndOfStream: false);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return true;
        }

        var content = head.AsSpan(0, read);
        return Path.GetExtension(path).ToLowerInvariant() switch
        {
            ".png" => content.StartsWith((ReadOnlySpan<byte>)[0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A]),
            ".jpg" or ".jpeg" => content.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF]),
            ".webp" => content.StartsWith("RIFF"u8) && content.Length >= 12 && content[8..12].SequenceEqual("WEBP"u8),
            _ => Encoding.UTF8.GetString(content).Contains("<svg", StringComparison.Ordinal),
        };
    }
}
