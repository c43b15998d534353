using System.Collections.Immutable;
using System.Globalization;

namespace EolSequencer.Wire.TextLines;

/// <summary>Control characters by their names, and bytes as people read them.</summary>
/// <remarks>Source: ECMA-48 and ISO/IEC 646, control characters of the C0 set.</remarks>
public static class ControlBytes
{
    private const int Blank = 0x20;
    private const int Delete = 0x7F;

    private static readonly string[] Names =
    [
        "NUL", "SOH", "STX", "ETX", "EOT", "ENQ", "ACK", "BEL", "BS", "HT", "LF", "VT", "FF", "CR", "SO", "SI",
        "DLE", "DC1", "DC2", "DC3", "DC4", "NAK", "SYN", "ETB", "CAN", "EM", "SUB", "ESC", "FS", "GS", "RS", "US",
    ];

    /// <summary>The bytes that names such as <c>CR LF</c> or <c>STX</c>, or two hexadecimal digits such as <c>0x1C</c>, stand for.</summary>
    /// <param name="text">Names with blanks between them.</param>
    /// <param name="bytes">At least one byte.</param>
    public static bool TryParse(string text, out ImmutableArray<byte> bytes)
    {
        var found = ImmutableArray.CreateBuilder<byte>();
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (Array.IndexOf(Names, word) is var at and >= 0) found.Add((byte)at);
            else if (word is ['0', 'x', _, _] && byte.TryParse(word.AsSpan(2), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var code)) found.Add(code);
            else if (word.Length == 1 && word[0] is > ' ' and < (char)Delete) found.Add((byte)word[0]);
            else found.Clear();
            if (found.Count == 0) break;
        }

        bytes = found.ToImmutable();
        return bytes.Length > 0;
    }

    /// <summary>Text with its control characters by name and all other bytes in hexadecimal: <c>1.25&lt;CR&gt;&lt;LF&gt;</c>.</summary>
    public static string Show(ReadOnlySpan<byte> bytes, int most = 120)
    {
        var text = new System.Text.StringBuilder();
        foreach (var code in bytes[..Math.Min(bytes.Length, most)])
        {
            if (code is >= Blank and < Delete) text.Append((char)code);
            else text.Append('<').Append(code < Blank ? Names[code] : code.ToString("X2", CultureInfo.InvariantCulture)).Append('>');
        }

        if (bytes.Length > most) text.Append(CultureInfo.InvariantCulture, $"… ({bytes.Length} bytes)");
        return text.ToString();
    }
}
