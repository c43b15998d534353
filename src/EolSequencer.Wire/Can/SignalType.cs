namespace EolSequencer.Wire.Can;

/// <summary>What the bits of a signal mean as a number.</summary>
public enum SignalType
{
    /// <summary>A count from 0.</summary>
    Unsigned,

    /// <summary>Two's complement.</summary>
    Signed,

    /// <summary>IEEE 754 binary32; the signal has 32 bits.</summary>
    Float32,
}
