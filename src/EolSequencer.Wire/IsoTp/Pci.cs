using System.Buffers.Binary;
using EolSequencer.Wire.Can;

namespace EolSequencer.Wire.IsoTp;

/// <summary>The protocol control information at the head of a frame.</summary>
/// <remarks>
/// Source: ISO 15765-2:2016, 9.6 and the length rules of its tables 13 and 14. A frame that breaks a rule of its kind
/// is <see cref="PciKind.Invalid"/> and is ignored without an answer.
/// </remarks>
internal readonly struct Pci
{
    private Pci(PciKind kind, int header, uint length, byte value = 0, string? fault = null) =>
        (Kind, HeaderLength, Length, Value, Fault) = (kind, header, length, value, fault);

    public PciKind Kind { get; }

    /// <summary>Bytes before the payload, the address byte included.</summary>
    public int HeaderLength { get; }

    /// <summary>Bytes of the message (single and first frame).</summary>
    public uint Length { get; }

    /// <summary>Number of a consecutive frame, status of a flow control.</summary>
    public byte Value { get; }

    /// <summary>Which rule an invalid frame breaks.</summary>
    public string? Fault { get; }

    public static PciKind KindOf(byte first) => (PciKind)Math.Min(first >> 4, (int)PciKind.Invalid);

    /// <param name="data">All data bytes of the frame.</param>
    /// <param name="prefix">Address bytes in front, 0 or 1.</param>
    public static Pci Read(ReadOnlySpan<byte> data, int prefix)
    {
        if (data.Length <= prefix)
        {
            return Invalid("an empty frame");
        }

        var first = data[prefix];
        return KindOf(first) switch
        {
            PciKind.Single => ReadSingle(data, prefix),
            PciKind.First => ReadFirst(data, prefix),
            PciKind.Consecutive => new Pci(PciKind.Consecutive, prefix + 1, 0, (byte)(first & 0xF)),
            PciKind.FlowControl when data.Length >= prefix + 3 =>
                new Pci(PciKind.FlowControl, prefix + 1, 0, (byte)(first & 0xF)),
            PciKind.FlowControl => Invalid("a flow control without block size and separation time"),
            _ => Invalid("a reserved kind of frame"),
        };
    }

    private static Pci ReadSingle(ReadOnlySpan<byte> data, int prefix)
    {
        var isLong = data.Length > CanFrame.ClassicalMax;
        if (isLong && (data[prefix] & 0xF) != 0)
        {
            return Invalid("a single frame above 8 bytes without the escape sequence");
        }

        var header = prefix + (isLong ? 2 : 1);
        int length = isLong ? data[prefix + 1] : data[prefix];
        var fits = isLong
            ? length >= 8 - prefix && header + length <= data.Length && DataLength.RoundUp(header + length) == data.Length
            : length > 0 && header + length <= data.Length;
        return fits
            ? new Pci(PciKind.Single, header, (uint)length)
            : Invalid("a single frame whose length does not go with its bytes");
    }

    private static Pci ReadFirst(ReadOnlySpan<byte> data, int prefix)
    {
        if (data.Length < CanFrame.ClassicalMax)
        {
            return Invalid("a first frame below 8 bytes");
        }

        var length = BinaryPrimitives.ReadUInt16BigEndian(data[prefix..]) & 0xFFFu;
        if (length == 0)
        {
            length = BinaryPrimitives.ReadUInt32BigEndian(data[(prefix + 2)..]);
            return length > TransportOptions.ShortLengthMax
                ? new Pci(PciKind.First, prefix + 6, length)
                : Invalid("a first frame with the escape sequence for a length that needs none");
        }

        var shortest = SingleMax(data.Length, prefix) + 1;
        return length >= shortest
            ? new Pci(PciKind.First, prefix + 2, length)
            : Invalid("a first frame for a message that fits into a single frame");
    }

    /// <summary>The longest message of a single frame of so many data bytes.</summary>
    public static int SingleMax(int frameLength, int prefix) =>
        frameLength - prefix - (frameLength > CanFrame.ClassicalMax ? 2 : 1);

    private static Pci Invalid(string fault) => new(PciKind.Invalid, 0, 0, fault: fault);
}
