using EolSequencer.Wire.Can;

namespace EolSequencer.Wire.IsoTp;

/// <summary>What one side of a connection has chosen for itself.</summary>
public sealed record TransportOptions
{
    /// <summary>What bytes are filled up with that CAN FD demands when no padding is chosen.</summary>
    /// <remarks>A byte with few equal bits in a row, so that it costs few stuff bits.</remarks>
    public const byte DefaultPadding = 0xCC;

    /// <summary>The longest message a length of 12 bits can announce.</summary>
    public const int ShortLengthMax = 4095;

    /// <summary>
    /// Byte that fills frames up to 8 data bytes, 0x00 included; null: frames end with their content. CAN FD frames
    /// above 8 bytes are always filled up to the next length there is.
    /// </summary>
    public byte? Padding { get; init; } = DefaultPadding;

    /// <summary>True: frames go out as CAN FD frames.</summary>
    public bool IsFd { get; init; }

    /// <summary>Whether CAN FD frames switch to the data bit rate.</summary>
    public bool HasBitRateSwitch { get; init; } = true;

    /// <summary>TX_DL, the most data bytes of a frame that goes out: 8; with CAN FD also 12, 16, 20, 24, 32, 48, 64.</summary>
    public int TransmitLength
    {
        get;
        init => field = value >= CanFrame.ClassicalMax && DataLength.Fits(value)
            ? value
            : throw new ArgumentOutOfRangeException(nameof(TransmitLength), value, "8, 12, 16, 20, 24, 32, 48 or 64 bytes");
    } = CanFrame.ClassicalMax;

    /// <summary>BS, how many consecutive frames this side takes between two flow controls; 0: all of them.</summary>
    public byte BlockSize { get; init; }

    /// <summary>STmin that this side asks for, as the byte on the bus; see <see cref="IsoTp.SeparationTime"/>.</summary>
    public byte SeparationTime { get; init; }

    /// <summary>
    /// N_WFTmax: how often in a row a busy receiver asks for patience, and how often a sender grants it; 0: never.
    /// </summary>
    /// <remarks>The standard bounds the receiver only; a sender without a bound could be held for ever.</remarks>
    public int MaxWaits { get; init; } = 10;

    /// <summary>The longest message this side takes, in bytes; a longer one is answered with "overflow".</summary>
    public int MaxMessage { get; init; } = ShortLengthMax;

    /// <summary>Makes a frame of these options.</summary>
    internal CanFrame Frame(CanId id, byte[] data) =>
        IsFd ? CanFrame.Fd(id, data, HasBitRateSwitch) : CanFrame.Classical(id, data);
}
