using System.Buffers.Binary;

namespace EolSequencer.Wire.Uds;

/// <summary>Small hands for the codecs: big-endian numbers, message heads, faults in one wording.</summary>
internal static class Bytes
{
    public static ushort UInt16(ReadOnlySpan<byte> bytes) => BinaryPrimitives.ReadUInt16BigEndian(bytes);

    public static byte High(ushort value) => (byte)(value >> 8);

    public static byte Low(ushort value) => (byte)value;

    /// <summary>A message of a fixed head and a tail.</summary>
    public static byte[] Join(ReadOnlySpan<byte> head, ReadOnlySpan<byte> tail)
    {
        var message = new byte[head.Length + tail.Length];
        head.CopyTo(message);
        tail.CopyTo(message.AsSpan(head.Length));
        return message;
    }

    public static bool IsRequest(ReadOnlySpan<byte> message, ServiceId service) =>
        message.Length > 0 && message[0] == (byte)service;

    public static byte PositiveOf(ServiceId service) => (byte)((byte)service + 0x40);

    /// <summary>What keeps a message from being a positive response of at least so many bytes; null: nothing.</summary>
    public static string? HeadFault(ReadOnlySpan<byte> message, ServiceId service, int least)
    {
        if (message.Length == 0 || message[0] != PositiveOf(service))
        {
            return $"no positive response of {service}";
        }

        return message.Length < least ? $"short answer ({message.Length} of {least} bytes)" : null;
    }
}
