using System.Globalization;
using EolSequencer.Wire.Modbus;

namespace EolSequencer.Wire.TextLines;

/// <summary>Checksums of text devices, each in the order in which its bytes are sent.</summary>
public static class Checksum
{
    private const int CcittPolynomial = 0x1021;

    /// <summary>How many bytes it has.</summary>
    public static int Length(ChecksumKind kind) => kind is ChecksumKind.CrcModbus or ChecksumKind.CrcCcitt ? 2 : 1;

    /// <summary>The checksum over some bytes.</summary>
    public static byte[] Of(ChecksumKind kind, ReadOnlySpan<byte> bytes) => kind switch
    {
        ChecksumKind.Xor => [Xor(bytes)],
        ChecksumKind.Sum => [Sum(bytes)],
        ChecksumKind.NegatedSum => [(byte)-Sum(bytes)],
        ChecksumKind.CrcModbus => LowFirst(Crc16.Of(bytes)),
        ChecksumKind.CrcCcitt => HighFirst(Ccitt(bytes)),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "there are five kinds"),
    };

    /// <summary>The checksum as capital hexadecimal digits, two for each byte.</summary>
    public static string Digits(ReadOnlySpan<byte> checksum) => Convert.ToHexString(checksum);

    /// <summary>The bytes that hexadecimal digits, capital or not, stand for; false when they are none.</summary>
    public static bool TryReadDigits(ReadOnlySpan<byte> digits, Span<byte> checksum)
    {
        if (digits.Length != 2 * checksum.Length) return false;
        for (var i = 0; i < checksum.Length; i++)
        {
            if (!byte.TryParse(digits.Slice(2 * i, 2), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out checksum[i])) return false;
        }

        return true;
    }

    private static byte Xor(ReadOnlySpan<byte> bytes)
    {
        byte sum = 0;
        foreach (var one in bytes) sum ^= one;
        return sum;
    }

    private static byte Sum(ReadOnlySpan<byte> bytes)
    {
        byte sum = 0;
        foreach (var one in bytes) sum = unchecked((byte)(sum + one));
        return sum;
    }

    private static ushort Ccitt(ReadOnlySpan<byte> bytes)
    {
        var crc = 0xFFFF;
        foreach (var one in bytes)
        {
            crc ^= one << 8;
            for (var bit = 0; bit < 8; bit++) crc = (crc & 0x8000) != 0 ? (crc << 1) ^ CcittPolynomial : crc << 1;
            crc &= 0xFFFF;
        }

        return (ushort)crc;
    }

    private static byte[] LowFirst(ushort crc) => [(byte)crc, (byte)(crc >> 8)];

    private static byte[] HighFirst(ushort crc) => [(byte)(crc >> 8), (byte)crc];
}
