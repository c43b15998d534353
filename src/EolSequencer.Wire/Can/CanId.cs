using System.Globalization;

namespace EolSequencer.Wire.Can;

/// <summary>The identifier of a CAN frame: 11 bits (base format) or 29 bits (extended format).</summary>
/// <remarks>
/// The two formats are different identifiers even when their numbers agree, so 123 and 00000123 are not equal.
/// The default value is the base identifier 000. Source: ISO 11898-1, frame formats.
/// </remarks>
public readonly struct CanId : IEquatable<CanId>
{
    internal const uint ExtendedMark = 0x8000_0000;

    private readonly uint _raw;

    private CanId(uint raw) => _raw = raw;

    /// <summary>The largest 11-bit identifier.</summary>
    public const uint BaseMax = 0x7FF;

    /// <summary>The largest 29-bit identifier.</summary>
    public const uint ExtendedMax = 0x1FFF_FFFF;

    /// <summary>The number without the format, 0 to <see cref="BaseMax"/> or <see cref="ExtendedMax"/>.</summary>
    public uint Value => _raw & ExtendedMax;

    /// <summary>True for the 29-bit format.</summary>
    public bool IsExtended => (_raw & ExtendedMark) != 0;

    /// <summary>The number with bit 31 set for the 29-bit format, as signal databases and captures write it.</summary>
    internal uint Marked => _raw;

    /// <summary>An 11-bit identifier.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is above <see cref="BaseMax"/>.</exception>
    public static CanId Base(uint value)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(value, BaseMax);
        return new CanId(value);
    }

    /// <summary>A 29-bit identifier.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is above <see cref="ExtendedMax"/>.</exception>
    public static CanId Extended(uint value)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(value, ExtendedMax);
        return new CanId(value | ExtendedMark);
    }

    /// <inheritdoc/>
    public bool Equals(CanId other) => _raw == other._raw;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is CanId other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => (int)_raw;

    /// <summary>Same number and same format.</summary>
    public static bool operator ==(CanId left, CanId right) => left._raw == right._raw;

    /// <summary>Another number or another format.</summary>
    public static bool operator !=(CanId left, CanId right) => left._raw != right._raw;

    /// <summary>Three hexadecimal digits for the 11-bit format, eight for the 29-bit format.</summary>
    public override string ToString() =>
        Value.ToString(IsExtended ? "X8" : "X3", CultureInfo.InvariantCulture);
}
