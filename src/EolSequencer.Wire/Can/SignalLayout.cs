namespace EolSequencer.Wire.Can;

/// <summary>Where a signal lies among the bytes of a frame or of an answer, and how its bits make a raw number.</summary>
/// <remarks>
/// Bit b lies in byte b div 8 and weighs 2^(b mod 8) there. A little-endian signal begins with its lowest bit and goes
/// up; a big-endian signal begins with its highest bit, goes down in the byte and on at bit 7 of the next one.
/// This is the numbering of the usual signal database files.
/// </remarks>
public readonly record struct SignalLayout
{
    /// <summary>A signal at a place.</summary>
    /// <param name="startBit">0 or more; the lowest bit (little) or the highest bit (big).</param>
    /// <param name="bitCount">1 to 64; 32 for <see cref="SignalType.Float32"/>.</param>
    /// <param name="order">How it runs through the bytes.</param>
    /// <param name="type">What its bits mean.</param>
    public SignalLayout(int startBit, int bitCount, ByteOrder order, SignalType type = SignalType.Unsigned)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(startBit);
        ArgumentOutOfRangeException.ThrowIfLessThan(bitCount, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(bitCount, 64);
        if (type == SignalType.Float32 && bitCount != 32)
        {
            throw new ArgumentException($"a float32 has 32 bits, not {bitCount}", nameof(bitCount));
        }

        (StartBit, BitCount, Order, Type) = (startBit, bitCount, order, type);
    }

    /// <summary>The lowest bit (little) or the highest bit (big).</summary>
    public int StartBit { get; }

    /// <summary>1 to 64.</summary>
    public int BitCount { get; }

    /// <summary>How the signal runs through the bytes.</summary>
    public ByteOrder Order { get; }

    /// <summary>What the bits mean.</summary>
    public SignalType Type { get; }

    /// <summary>How many bytes there must be for the signal to lie inside; fewer are a short answer.</summary>
    public int BytesNeeded => ((First + BitCount - 1) / 8) + 1;

    // The first bit in the direction of reading: upward from bit 0 of a byte (little), or from bit 7 downward (big).
    private int First => Order == ByteOrder.Little ? StartBit : StartBit ^ 7;

    private ulong AllOnes => ulong.MaxValue >> (64 - BitCount);

    /// <summary>Cuts the signal out.</summary>
    /// <param name="data">At least <see cref="BytesNeeded"/> bytes.</param>
    /// <returns>Its bits, the lowest at the right, zeros above.</returns>
    public ulong ReadBits(ReadOnlySpan<byte> data)
    {
        CheckLength(data.Length);
        var (bits, position) = (0UL, First);
        for (int done = 0, take; done < BitCount; done += take, position += take)
        {
            var offset = position & 7;
            take = Math.Min(8 - offset, BitCount - done);
            var mask = (1u << take) - 1;
            bits = Order == ByteOrder.Little
                ? bits | ((ulong)((uint)(data[position >> 3] >> offset) & mask) << done)
                : (bits << take) | ((uint)(data[position >> 3] >> (8 - offset - take)) & mask);
        }

        return bits;
    }

    /// <summary>Puts the signal in; the bits around it stay.</summary>
    /// <param name="data">At least <see cref="BytesNeeded"/> bytes.</param>
    /// <param name="bits">Its bits, the lowest at the right; what is above <see cref="BitCount"/> must be zero.</param>
    public void WriteBits(Span<byte> data, ulong bits)
    {
        CheckLength(data.Length);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(bits, AllOnes);
        var position = First;
        for (int done = 0, take; done < BitCount; done += take, position += take)
        {
            var offset = position & 7;
            take = Math.Min(8 - offset, BitCount - done);
            var (part, shift) = Order == ByteOrder.Little
                ? (bits >> done, offset)
                : (bits >> (BitCount - done - take), 8 - offset - take);
            var mask = ((1u << take) - 1) << shift;
            data[position >> 3] = (byte)((data[position >> 3] & ~mask) | ((uint)(part << shift) & mask));
        }
    }

    /// <summary>The raw number that bits stand for, before scale and offset.</summary>
    /// <param name="bits">As <see cref="ReadBits"/> returns them.</param>
    /// <param name="raw">
    /// The number. A float32 gives the shortest decimal number that reads back as the same float32, so 0.1 stays 0.1.
    /// </param>
    /// <returns>False for a float32 that is infinite, no number, or of a size of 7.9e28 or more.</returns>
    public bool TryGetRaw(ulong bits, out decimal raw)
    {
        raw = Type switch
        {
            SignalType.Unsigned => bits,
            SignalType.Signed => (long)(bits << (64 - BitCount)) >> (64 - BitCount),
            _ => 0,
        };
        return Type != SignalType.Float32 || Float32.TryToDecimal((uint)bits, out raw);
    }

    /// <summary>The bits of a raw number.</summary>
    /// <param name="raw">The number; it is rounded to a whole one, half to even, unless the signal is a float32.</param>
    /// <param name="bits">Its bits, for <see cref="WriteBits"/>.</param>
    /// <returns>False when the signal is too narrow for the number.</returns>
    public bool TryGetBits(decimal raw, out ulong bits)
    {
        bits = 0;
        if (Type == SignalType.Float32)
        {
            bits = Float32.FromDecimal(raw);
            return true;
        }

        var whole = Math.Round(raw, MidpointRounding.ToEven);
        var (lowest, highest) = Type == SignalType.Unsigned
            ? (0m, (decimal)AllOnes)
            : (-(decimal)(AllOnes >> 1) - 1, (decimal)(AllOnes >> 1));
        if (whole < lowest || whole > highest)
        {
            return false;
        }

        bits = (whole < 0 ? (ulong)(long)whole : (ulong)whole) & AllOnes;
        return true;
    }

    private void CheckLength(int length)
    {
        if (length < BytesNeeded)
        {
            throw new ArgumentException($"the signal ends in byte {BytesNeeded}, there are {length}", nameof(length));
        }
    }
}
