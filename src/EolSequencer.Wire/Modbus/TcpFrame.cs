namespace EolSequencer.Wire.Modbus;

/// <summary>A message over TCP: transaction, protocol 0, length, unit, then the function and its data.</summary>
/// <param name="Transaction">Repeated by the answer, which is how the two are paired.</param>
/// <param name="Unit">The unit behind a gateway; 255 or 0 where there is none.</param>
/// <param name="Pdu">Function code and data, 1 to 253 bytes.</param>
/// <remarks>Source: MODBUS Messaging on TCP/IP Implementation Guide V1.0b (modbus.org), 3.1.3.</remarks>
public readonly record struct TcpFrame(ushort Transaction, byte Unit, ReadOnlyMemory<byte> Pdu)
{
    /// <summary>The port that is registered for it.</summary>
    public const int Port = 502;

    internal const int HeaderLength = 7;
    internal const int LongestPdu = 253;

    /// <summary>Its bytes.</summary>
    public byte[] ToBytes()
    {
        var length = Pdu.Length + 1;
        return [(byte)(Transaction >> 8), (byte)Transaction, 0, 0, (byte)(length >> 8), (byte)length, Unit, .. Pdu.Span];
    }
}
