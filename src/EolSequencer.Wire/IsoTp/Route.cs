using EolSequencer.Wire.Can;

namespace EolSequencer.Wire.IsoTp;

/// <summary>One direction of a transport address: what every frame of it carries.</summary>
/// <param name="Id">The identifier.</param>
/// <param name="Prefix">
/// The first data byte: the target address (extended addressing) or the address extension (mixed addressing); null for
/// normal addressing, where the frame begins with the protocol control information.
/// </param>
/// <remarks>Source: ISO 15765-2, address mapping; the fixed identifiers have priority 6.</remarks>
public readonly record struct Route(CanId Id, byte? Prefix = null)
{
    private const uint NormalFixedPhysical = 0x18DA_0000;
    private const uint NormalFixedFunctional = 0x18DB_0000;
    private const uint MixedFixedPhysical = 0x18CE_0000;
    private const uint MixedFixedFunctional = 0x18CD_0000;

    /// <summary>Data bytes that the address takes from every frame: 0 or 1.</summary>
    public int PrefixLength => Prefix is null ? 0 : 1;

    /// <summary>Normal fixed addressing of one control unit: 18DA, target, source.</summary>
    public static Route NormalFixed(byte target, byte source) => Fixed(NormalFixedPhysical, target, source);

    /// <summary>Normal fixed addressing of a group: 18DB, target, source.</summary>
    public static Route NormalFixedGroup(byte target, byte source) => Fixed(NormalFixedFunctional, target, source);

    /// <summary>Mixed addressing of one control unit with a 29-bit identifier: 18CE, target, source.</summary>
    public static Route MixedFixed(byte target, byte source, byte extension) =>
        Fixed(MixedFixedPhysical, target, source) with { Prefix = extension };

    /// <summary>Mixed addressing of a group with a 29-bit identifier: 18CD, target, source.</summary>
    public static Route MixedFixedGroup(byte target, byte source, byte extension) =>
        Fixed(MixedFixedFunctional, target, source) with { Prefix = extension };

    /// <summary>Whether a frame goes this way.</summary>
    public bool Takes(in CanFrame frame) =>
        frame.Id == Id && (Prefix is not { } prefix || (frame.Data.Length > 0 && frame.Data.Span[0] == prefix));

    private static Route Fixed(uint kind, byte target, byte source) =>
        new(CanId.Extended(kind | ((uint)target << 8) | source));
}
