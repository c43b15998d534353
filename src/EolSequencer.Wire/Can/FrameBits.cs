namespace EolSequencer.Wire.Can;

/// <summary>How many bit times a frame keeps the bus, start of frame to the end of the intermission.</summary>
/// <remarks>
/// Source: ISO 11898-1, frame formats and bit stuffing; worst case after Davis, Burns, Bril and Lukkien, "Controller
/// Area Network (CAN) schedulability analysis", Real-Time Systems 35 (2007), equations 1 to 3.
/// </remarks>
public static class FrameBits
{
    /// <summary>The three recessive bits that every frame is followed by; they are part of every length here.</summary>
    public const int Intermission = 3;

    /// <summary>The exact length, stuff bits and check sequence counted bit by bit.</summary>
    /// <param name="frame">
    /// Any frame. Of CAN FD, the sender is taken as error active, and a stuff bit that falls due behind the last data
    /// bit is the first fixed one of the check field and not a further one.
    /// </param>
    public static int Of(in CanFrame frame) =>
        frame.IsFd ? FdBits.Of(frame).Total : Unstuffed(frame.Data.Length, frame.IsExtended, isFd: false) + ClassicalStuffing(frame, out _);

    /// <summary>The length without a single stuff bit, the fixed ones of CAN FD counted: no frame is shorter.</summary>
    /// <param name="dataLength">Data bytes that such a frame can hold.</param>
    /// <param name="isExtended">29-bit identifier.</param>
    /// <param name="isFd">CAN FD frame.</param>
    public static int Unstuffed(int dataLength, bool isExtended, bool isFd)
    {
        Check(dataLength, isFd);
        if (!isFd)
        {
            return (isExtended ? 67 : 47) + (8 * dataLength);
        }

        return FdBits.Header(isExtended) + (8 * dataLength) + FdBits.CheckField(dataLength) + FdBits.Footer;
    }

    /// <summary>A length that no frame exceeds, whatever its bytes.</summary>
    /// <inheritdoc cref="Unstuffed" path="/param"/>
    public static int Worst(int dataLength, bool isExtended, bool isFd)
    {
        var stuffable = (8 * dataLength) + (isFd ? FdBits.Header(isExtended) : isExtended ? 54 : 34);
        return Unstuffed(dataLength, isExtended, isFd) + ((stuffable - 1) / 4);
    }

    /// <summary>The stuff bits of a classical frame and, on the way, its check sequence.</summary>
    internal static int ClassicalStuffing(in CanFrame frame, out int crc)
    {
        var data = frame.Data.Span;
        var header = ClassicalHeader(frame.Id, data.Length, out var fill);
        var stuffing = new StuffCounter();
        crc = 0;
        for (var shift = frame.IsExtended ? 32 : 16; shift >= 0; shift -= 8)
        {
            stuffing.Add((byte)((header | fill) >> shift));
            crc = Crc15.Add(crc, (byte)(header >> shift));
        }

        foreach (var value in data)
        {
            stuffing.Add(value);
            crc = Crc15.Add(crc, value);
        }

        // The sixteenth bit fills up the byte; being the opposite of the last check bit it cannot complete a run.
        var tail = (crc << 1) | (~crc & 1);
        stuffing.Add((byte)(tail >> 8));
        stuffing.Add((byte)tail);
        return stuffing.Count;
    }

    // Base:     SOF 0, identifier 11, RTR 0, IDE 0, r0 0, length code 4                                     = 19 bits
    // Extended: SOF 0, identifier 11, SRR 1, IDE 1, identifier 18, RTR 0, r1 0, r0 0, length code 4         = 39 bits
    private static ulong ClassicalHeader(CanId id, int length, out ulong fill)
    {
        if (!id.IsExtended)
        {
            fill = 0b10101UL << 19;
            return ((ulong)id.Value << 7) | (uint)length;
        }

        fill = 1UL << 39;
        return ((ulong)(id.Value >> 18) << 27) | (0b11UL << 25) | ((ulong)(id.Value & 0x3FFFF) << 7) | (uint)length;
    }

    private static void Check(int dataLength, bool isFd)
    {
        if (isFd ? !DataLength.Fits(dataLength) : dataLength is < 0 or > CanFrame.ClassicalMax)
        {
            throw new ArgumentOutOfRangeException(nameof(dataLength), dataLength, "no such frame holds so many bytes");
        }
    }
}
