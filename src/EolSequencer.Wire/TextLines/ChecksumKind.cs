namespace EolSequencer.Wire.TextLines;

/// <summary>How a device sums its text up.</summary>
public enum ChecksumKind
{
    /// <summary>All bytes exclusive-ored; a block check character. One byte.</summary>
    Xor,

    /// <summary>All bytes added, modulo 256. One byte.</summary>
    Sum,

    /// <summary>What is missing from the sum to 256, as in MODBUS ASCII. One byte.</summary>
    NegatedSum,

    /// <summary>CRC-16 as MODBUS has it: 0x8005 reflected, start FFFF; the low byte is sent first. Two bytes.</summary>
    CrcModbus,

    /// <summary>CRC-16 of ITU-T V.41's polynomial 0x1021, start FFFF, not reflected; the high byte is sent first. Two bytes.</summary>
    CrcCcitt,
}
