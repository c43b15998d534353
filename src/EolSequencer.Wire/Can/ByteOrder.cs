namespace EolSequencer.Wire.Can;

/// <summary>In which order a signal runs through the bytes.</summary>
public enum ByteOrder
{
    /// <summary>The lowest bit stands first; the start bit is the lowest (Intel).</summary>
    Little,

    /// <summary>The highest bit stands first; the start bit is the highest (Motorola).</summary>
    Big,
}
