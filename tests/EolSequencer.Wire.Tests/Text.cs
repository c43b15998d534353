using System.Globalization;

namespace EolSequencer.Wire.Tests;

/// <summary>Numbers and bytes as they are written in test data, where attributes take no decimal and no byte array.</summary>
internal static class Text
{
    public static decimal Number(string text) => decimal.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    public static byte[] Bytes(string hex) => Convert.FromHexString(hex.Replace(" ", "", StringComparison.Ordinal));

    public static string Hex(ReadOnlyMemory<byte> bytes) => Convert.ToHexString(bytes.Span);

    /// <summary>The numbers first, first + 1, … modulo 256.</summary>
    public static byte[] Counting(int first, int count) =>
        [.. Enumerable.Range(first, count).Select(i => (byte)i)];
}
