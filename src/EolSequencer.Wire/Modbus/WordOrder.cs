namespace EolSequencer.Wire.Modbus;

/// <summary>
/// In which order the bytes of a number arrive, A being the most significant one. Longer numbers go on with E to H:
/// ABCDEFGH, GHEFCDAB, BADCFEHG, HGFEDCBA; one register knows AB and BA.
/// </summary>
public enum WordOrder
{
    /// <summary>ABCD: the most significant byte first, as MODBUS has it within a register.</summary>
    Abcd,

    /// <summary>CDAB: the least significant register first.</summary>
    Cdab,

    /// <summary>BADC: the bytes of each register swapped.</summary>
    Badc,

    /// <summary>DCBA: the least significant byte first.</summary>
    Dcba,
}
