using System.Globalization;

namespace EolSequencer.Wire.Modbus;

/// <summary>A message on a serial line: unit, function and data, check.</summary>
/// <param name="Unit">1 to 247; 0 speaks to all, and nobody answers.</param>
/// <param name="Pdu">Function code and data, 1 to 253 bytes.</param>
/// <remarks>Source: MODBUS over Serial Line V1.02 (modbus.org), 2.5.1.</remarks>
public readonly record struct RtuFrame(byte Unit, ReadOnlyMemory<byte> Pdu)
{
    internal const int Shortest = 4;
    internal const int Longest = 256;

    /// <summary>Its bytes.</summary>
    public byte[] ToBytes()
    {
        byte[] content = [Unit, .. Pdu.Span];
        var crc = Crc16.Of(content);
        return [.. content, (byte)crc, (byte)(crc >> 8)];
    }

    /// <summary>What whole frames mean; a fault when the check is wrong.</summary>
    public static Decoded<RtuFrame> Read(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length is < Shortest or > Longest) return Decoded<RtuFrame>.Faulty($"{bytes.Length} bytes are no message ({Shortest} to {Longest} are due)");
        var due = Crc16.Of(bytes[..^2]);
        var got = (ushort)(bytes[^2] | (bytes[^1] << 8));
        return got == due
            ? new RtuFrame(bytes[0], bytes[1..^2].ToArray())
            : Decoded<RtuFrame>.Faulty(string.Create(CultureInfo.InvariantCulture, $"check {got:X4} instead of {due:X4} in {Convert.ToHexString(bytes)}"));
    }
}
