using System.Collections.Immutable;
using EolSequencer.Model.Units;

namespace EolSequencer.Model.Devices;

/// <summary>How a value lies in bytes or bits: value = raw × scale + offset.</summary>
public sealed record RawForm
{
    /// <summary>Type of the raw value.</summary>
    public required RawType Type { get; init; }

    /// <summary>Bytes of a text, bits of a number in a broadcast frame; 0 when the type says it all.</summary>
    public int Length { get; init; }

    /// <summary>Multiplier, in <see cref="Unit"/> per bit.</summary>
    public decimal Scale { get; init; } = 1;

    /// <summary>Added after the multiplication, in <see cref="Unit"/>.</summary>
    public decimal Offset { get; init; }

    /// <summary>Unit of the value; null: a count, text or truth value.</summary>
    public Unit? Unit { get; init; }

    /// <summary>Raw values that mean "no value".</summary>
    public ImmutableArray<long> Invalid { get; init; } = [];

    /// <summary>True: the least significant byte comes first.</summary>
    public bool IsLittleEndian { get; init; }
}

/// <summary>Types of raw values.</summary>
public enum RawType
{
    /// <summary>One bit or byte: 0 no, anything else yes.</summary>
    YesNo,
    /// <summary>Unsigned whole number.</summary>
    Unsigned,
    /// <summary>Two's complement whole number.</summary>
    Signed,
    /// <summary>IEEE 754 binary32.</summary>
    Float32,
    /// <summary>ASCII text, padded at the end with 00, FF or blanks.</summary>
    Text,
    /// <summary>Bytes shown as hex text.</summary>
    Bytes,
}
