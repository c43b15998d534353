namespace EolSequencer.Wire.Modbus;

/// <summary>The check of a MODBUS frame on a serial line.</summary>
/// <remarks>
/// Source: MODBUS over Serial Line V1.02 (modbus.org), 6.2.2: polynomial 0x8005 reflected (A001), start FFFF, no final
/// inversion; the low byte is sent first.
/// </remarks>
public static class Crc16
{
    private const int Polynomial = 0xA001;
    private static readonly ushort[] Table = BuildTable();

    /// <summary>The check over some bytes.</summary>
    public static ushort Of(ReadOnlySpan<byte> bytes)
    {
        ushort crc = 0xFFFF;
        foreach (var one in bytes) crc = (ushort)((crc >> 8) ^ Table[(crc ^ one) & 0xFF]);
        return crc;
    }

    private static ushort[] BuildTable()
    {
        var table = new ushort[256];
        for (var index = 0; index < table.Length; index++)
        {
            var crc = index;
            for (var bit = 0; bit < 8; bit++) crc = (crc & 1) != 0 ? (crc >> 1) ^ Polynomial : crc >> 1;
            table[index] = (ushort)crc;
        }

        return table;
    }
}
