using System.Text;

namespace EolSequencer.Language.Plants;

/// <summary>
/// Kind and id of a file from its first lines, without reading the whole. It only finds files; what a file means is read
/// from its document.
/// </summary>
/// <param name="Kind">By the first key.</param>
/// <param name="Id">What stands behind it, without quotes.</param>
internal readonly record struct FileHeader(FileKind Kind, string Id)
{
    /// <summary>The head of a file that is looked at, in bytes: a comment before the first key may be long.</summary>
    public const int MostBytes = 16 * 1024;

    /// <summary>The header of a file, or null when it begins with no known kind.</summary>
    public static FileHeader? Of(ReadOnlySpan<byte> head)
    {
        foreach (var written in Encoding.UTF8.GetString(head).TrimStart('\uFEFF').Split('\n'))
        {
            // A JSON order begins with a brace, the same line or the next holding its first key.
            var line = written.Trim(' ', '\t', '\r', '{');
            if (line.Length > 0 && line[0] is not '#' and not '-') return OfLine(line);
        }

        return null;
    }

    private static FileHeader? OfLine(string line)
    {
        var colon = line.IndexOf(':');
        if (colon < 0 || FileKinds.Of(Unquoted(line[..colon])) is not { } kind) return null;
        return new FileHeader(kind, Value(line[(colon + 1)..].Trim()));
    }

    private static string Value(string text)
    {
        if (text is ['"' or '\'', ..] && text.IndexOf(text[0], 1) is var close and > 0) return text[1..close];
        var end = text.IndexOfAny([',', '}', '#']);
        return (end < 0 ? text : text[..end]).TrimEnd();
    }

    private static string Unquoted(string text) => text.Trim().Trim('"', '\'');
}
