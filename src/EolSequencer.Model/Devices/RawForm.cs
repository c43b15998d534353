using System.Collections.Immutable;
using EolSequencer.Model.Units;

namespace EolSequencer.Model.Devices;

/// <summary>How a value lies in bytes or bits: value = raw × scale + offset.</summary>
public sealed record RawForm
{
    /// <summary>Type of the raw value.</summary>
    public required RawType Type { get; init; }

    /// <summary>Bytes of a text or of shown bytes; bits of a number or truth value.</summary>
    public required int Length { get; init; }

    /// <summary>The byte that fills a short text up behind its end; null: 00, FF or blank.</summary>
    public byte? Padding { get; init; }

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
    /// <summary>ASCII text, filled up at the end.</summary>
    Text,
    /// <summary>Bytes shown as hex text.</summary>
    Bytes,
}
