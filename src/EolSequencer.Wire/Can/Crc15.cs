namespace EolSequencer.Wire.Can;

/// <summary>The check sequence of a classical CAN frame, a byte at a step.</summary>
/// <remarks>
/// Source: ISO 11898-1, CRC-15: polynomial 0x4599, start 0, no reflection, no final inversion. Because it starts at 0,
/// leading zero bits change nothing, so a field may be filled up in front to whole bytes.
/// </remarks>
internal static class Crc15
{
    private const int Polynomial = 0x4599;
    private const int Mask = 0x7FFF;
    private static readonly ushort[] Table = BuildTable();

    public static int Add(int crc, byte bits) => ((crc << 8) ^ Table[((crc >> 7) ^ bits) & 0xFF]) & Mask;

    private static ushort[] BuildTable()
    {
        var table = new ushort[256];
        for (var index = 0; index < table.Length; index++)
        {
            var crc = index << 7;
            for (var bit = 0; bit < 8; bit++)
            {
                crc = (crc << 1) ^ ((crc & 0x4000) != 0 ? Polynomial : 0);
            }

            table[index] = (ushort)(crc & Mask);
        }

        return table;
    }
}
