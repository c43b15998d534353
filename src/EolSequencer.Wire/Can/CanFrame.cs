namespace EolSequencer.Wire.Can;

/// <summary>A CAN or CAN FD data frame: identifier and bytes.</summary>
/// <remarks>
/// Only data frames exist as values of this type: error and remote frames stay in the link that saw them, so nobody
/// who waits for an identifier is answered by one. The bytes are not copied; whoever made them leaves them unchanged
/// from then on, so a receiver may keep a frame. The default value is the empty frame 000. Source: ISO 11898-1.
/// </remarks>
public readonly struct CanFrame : IEquatable<CanFrame>
{
    /// <summary>The most data bytes of a classical frame.</summary>
    public const int ClassicalMax = 8;

    /// <summary>The most data bytes of a CAN FD frame.</summary>
    public const int FdMax = 64;

    private readonly FrameFormat _format;

    private CanFrame(CanId id, ReadOnlyMemory<byte> data, FrameFormat format) => (Id, Data, _format) = (id, data, format);

    /// <summary>Who sends what: the identifier, which is also the priority on the bus (lower wins).</summary>
    public CanId Id { get; }

    /// <summary>The data bytes as they stand on the bus, padding included.</summary>
    public ReadOnlyMemory<byte> Data { get; }

    /// <summary>True for a 29-bit identifier.</summary>
    public bool IsExtended => Id.IsExtended;

    /// <summary>True for a CAN FD frame.</summary>
    public bool IsFd => _format != FrameFormat.Classical;

    /// <summary>True for a CAN FD frame whose data phase runs at the data bit rate.</summary>
    public bool HasBitRateSwitch => _format == FrameFormat.FdWithSwitch;

    /// <summary>A classical frame.</summary>
    /// <param name="id">The identifier.</param>
    /// <param name="data">0 to 8 bytes.</param>
    /// <exception cref="ArgumentException">More than 8 bytes.</exception>
    public static CanFrame Classical(CanId id, ReadOnlyMemory<byte> data) =>
        data.Length <= ClassicalMax
            ? new CanFrame(id, data, FrameFormat.Classical)
            : throw new ArgumentException($"a classical frame holds 0 to 8 bytes, not {data.Length}", nameof(data));

    /// <summary>A CAN FD frame.</summary>
    /// <param name="id">The identifier.</param>
    /// <param name="data">0 to 8, 12, 16, 20, 24, 32, 48 or 64 bytes.</param>
    /// <param name="bitRateSwitch">Whether the data phase runs at the data bit rate.</param>
    /// <exception cref="ArgumentException">A length that no data length code stands for.</exception>
    public static CanFrame Fd(CanId id, ReadOnlyMemory<byte> data, bool bitRateSwitch = true) =>
        DataLength.Fits(data.Length)
            ? new CanFrame(id, data, bitRateSwitch ? FrameFormat.FdWithSwitch : FrameFormat.Fd)
            : throw new ArgumentException($"no CAN FD frame holds {data.Length} bytes", nameof(data));

    /// <summary>Reads the form that <see cref="ToString"/> writes.</summary>
    /// <exception cref="FormatException">The text is not of that form, or no frame holds so many bytes.</exception>
    public static CanFrame Parse(string text) => CanFrameText.Parse(text);

    /// <summary>Same identifier, same format, same bytes.</summary>
    public bool Equals(CanFrame other) =>
        Id == other.Id && _format == other._format && Data.Span.SequenceEqual(other.Data.Span);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is CanFrame other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = new HashCode();
        hash.Add(Id);
        hash.Add(_format);
        hash.AddBytes(Data.Span);
        return hash.ToHashCode();
    }

    /// <summary>Same identifier, same format, same bytes.</summary>
    public static bool operator ==(CanFrame left, CanFrame right) => left.Equals(right);

    /// <summary>Another identifier, format or byte.</summary>
    public static bool operator !=(CanFrame left, CanFrame right) => !left.Equals(right);

    /// <summary>
    /// The usual log form <c>7E0#0322F190</c>; CAN FD as <c>7E0##1…</c>, where the digit is 1 with and 0 without
    /// bit-rate switch; eight digits of identifier for 29 bits.
    /// </summary>
    public override string ToString() => CanFrameText.Format(this);

    private enum FrameFormat : byte
    {
        Classical,
        Fd,
        FdWithSwitch,
    }
}
