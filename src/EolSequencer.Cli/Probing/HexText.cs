namespace EolSequencer.Cli.Probing;

/// <summary>Bytes as people read them: <c>22 F1 90</c>.</summary>
internal static class HexText
{
    private const int Most = 64;

    public static string Of(ReadOnlySpan<byte> bytes)
    {
        var shown = bytes.Length > Most ? bytes[..Most] : bytes;
        var text = string.Join(' ', Convert.ToHexString(shown).Chunk(2).Select(pair => new string(pair)));
        return bytes.Length > Most ? $"{text} … ({bytes.Length} bytes)" : text;
    }
}
