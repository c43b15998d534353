namespace EolSequencer.Wire.Can;

/// <summary>The data length code: four bits that stand for the number of data bytes of a frame.</summary>
/// <remarks>Source: ISO 11898-1, data length code; codes 9 to 15 mean 8 bytes in a classical frame.</remarks>
public static class DataLength
{
    private static ReadOnlySpan<byte> FdLengths => [0, 1, 2, 3, 4, 5, 6, 7, 8, 12, 16, 20, 24, 32, 48, 64];

    /// <summary>True when a CAN FD frame can hold exactly so many bytes.</summary>
    public static bool Fits(int length) => (uint)length <= 8 || FdLengths[9..].Contains((byte)Math.Min(length, byte.MaxValue));

    /// <summary>The smallest data length that holds so many bytes.</summary>
    /// <param name="length">0 to 64 bytes.</param>
    /// <returns>The same number up to 8, above it the next of 12, 16, 20, 24, 32, 48, 64.</returns>
    public static int RoundUp(int length) => FdLengths[CodeFor(length)];

    /// <summary>The smallest code whose length holds so many bytes.</summary>
    /// <param name="length">0 to 64 bytes.</param>
    /// <returns>0 to 15; 0 to 8 for what fits in a classical frame.</returns>
    public static int CodeFor(int length)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(length);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(length, CanFrame.FdMax);
        var code = Math.Min(length, 8);
        while (FdLengths[code] < length)
        {
            code++;
        }

        return code;
    }

    /// <summary>The number of data bytes that a code stands for.</summary>
    /// <param name="code">0 to 15.</param>
    /// <param name="isFd">Whether the frame is CAN FD.</param>
    public static int Of(int code, bool isFd)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(code);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(code, 15);
        return isFd ? FdLengths[code] : Math.Min(code, CanFrame.ClassicalMax);
    }
}
