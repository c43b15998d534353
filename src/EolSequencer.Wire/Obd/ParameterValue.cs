using EolSequencer.Model.Units;

namespace EolSequencer.Wire.Obd;

/// <summary>One value of a parameter: raw × multiplier ÷ divisor + offset, raw being unsigned and big-endian.</summary>
public sealed record ParameterValue
{
    internal ParameterValue(string name, Unit? unit, int firstByte, int byteCount)
    {
        (Name, Unit, FirstByte, ByteCount) = (name, unit, firstByte, byteCount);
    }

    /// <summary>What it is, in words.</summary>
    public string Name { get; }

    /// <summary>Its unit; null for a count, a ratio of one or a code.</summary>
    public Unit? Unit { get; }

    /// <summary>Its first data byte, from 0.</summary>
    public int FirstByte { get; }

    /// <summary>1 or 2.</summary>
    public int ByteCount { get; }

    internal decimal Multiplier { get; init; } = 1;

    internal decimal Divisor { get; init; } = 1;

    internal decimal Offset { get; init; }

    /// <summary>The raw number that says "not used here"; null: every number is a value.</summary>
    internal int? NotUsed { get; init; }

    private int RawMax => ByteCount == 1 ? byte.MaxValue : ushort.MaxValue;

    /// <summary>The value.</summary>
    /// <param name="data">The parameter's data bytes, as many as it has.</param>
    /// <param name="value">In <see cref="Unit"/>.</param>
    /// <returns>False when the control unit marks the value as not used.</returns>
    public bool TryRead(ReadOnlySpan<byte> data, out decimal value)
    {
        var raw = 0;
        foreach (var part in data.Slice(FirstByte, ByteCount))
        {
            raw = (raw << 8) | part;
        }

        value = (raw * Multiplier / Divisor) + Offset;
        return raw != NotUsed;
    }

    /// <summary>Puts the nearest raw number in; the other data bytes stay.</summary>
    /// <param name="data">The parameter's data bytes, as many as it has.</param>
    /// <param name="value">In <see cref="Unit"/>; beyond its range the nearest end is taken, as a control unit does.</param>
    public void Write(Span<byte> data, decimal value)
    {
        var raw = (int)Math.Clamp(Math.Round((value - Offset) * Divisor / Multiplier), 0, RawMax);
        for (var i = FirstByte + ByteCount - 1; i >= FirstByte; i--, raw >>= 8)
        {
            data[i] = (byte)raw;
        }
    }
}
