namespace EolSequencer.Wire.IsoTp;

/// <summary>STmin, the shortest gap the receiver wants between two consecutive frames, as a byte.</summary>
/// <remarks>Source: ISO 15765-2:2016, separation time minimum and its reserved values.</remarks>
public static class SeparationTime
{
    /// <summary>The gap a byte stands for.</summary>
    /// <param name="raw">Third byte of a flow control, any value.</param>
    /// <returns>0 to 127 ms in steps of 1 ms, or 100 to 900 µs in steps of 100 µs; a reserved byte gives 127 ms.</returns>
    public static TimeSpan Decode(byte raw) => raw switch
    {
        <= 0x7F => TimeSpan.FromMilliseconds(raw),
        >= 0xF1 and <= 0xF9 => TimeSpan.FromMicroseconds((raw - 0xF0) * 100),
        _ => TimeSpan.FromMilliseconds(127),
    };

    /// <summary>The byte of the shortest gap that is not shorter than the one given.</summary>
    /// <param name="gap">0 to 127 ms.</param>
    public static byte Encode(TimeSpan gap)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(gap, TimeSpan.Zero);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(gap, TimeSpan.FromMilliseconds(127));
        var hundreds = RoundUp(gap, TimeSpan.FromMicroseconds(100));
        return (byte)(hundreds is > 0 and <= 9 ? 0xF0 + hundreds : RoundUp(gap, TimeSpan.FromMilliseconds(1)));
    }

    private static long RoundUp(TimeSpan gap, TimeSpan step) => (gap.Ticks + step.Ticks - 1) / step.Ticks;
}
