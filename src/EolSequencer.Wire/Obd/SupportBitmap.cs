namespace EolSequencer.Wire.Obd;

/// <summary>Parameters 00, 20, 40 …: which of the 32 that follow a control unit supports.</summary>
/// <remarks>Source: SAE J1979. Bit 7 of the first byte is the next number; the last bit is the next bitmap.</remarks>
public static class SupportBitmap
{
    private const int Span = 32;

    /// <summary>Its data bytes.</summary>
    public const int Length = 4;

    /// <summary>The numbers that are bitmaps.</summary>
    internal static IEnumerable<byte> Parameters => Enumerable.Range(0, 8).Select(block => (byte)(block * Span));

    /// <summary>The supported numbers, ascending; the next bitmap's own number among them.</summary>
    /// <param name="first">The number of the bitmap: 00, 20, 40 … E0.</param>
    /// <param name="bits">Its four bytes.</param>
    public static IReadOnlyList<byte> Read(byte first, ReadOnlySpan<byte> bits)
    {
        var supported = new List<byte>(Span);
        for (var i = 0; i < Length * 8; i++)
        {
            if ((bits[i / 8] & (0x80 >> (i % 8))) != 0)
            {
                supported.Add((byte)(first + 1 + i));
            }
        }

        return supported;
    }

    /// <summary>The bitmap of what is supported.</summary>
    /// <param name="first">The number of the bitmap: 00, 20, 40 … E0.</param>
    /// <param name="supported">Any numbers; those of other bitmaps set the last bit when they come later.</param>
    public static byte[] Write(byte first, IEnumerable<byte> supported)
    {
        var bits = new byte[Length];
        foreach (var id in supported.Where(id => id > first))
        {
            var i = Math.Min(id - first, Span) - 1;
            bits[i / 8] |= (byte)(0x80 >> (i % 8));
        }

        return bits;
    }
}
