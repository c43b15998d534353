namespace EolSequencer.Wire.Modbus;

/// <summary>Functions 15 and 16: writes a row of coils or holding registers; the answer repeats address and count.</summary>
/// <remarks>Source: MODBUS Application Protocol Specification V1.1b3, 6.11 and 6.12.</remarks>
public static class WriteMultiple
{
    /// <summary>Most coils of one request.</summary>
    public const int MostCoils = 1968;

    /// <summary>Most registers of one request.</summary>
    public const int MostRegisters = 123;

    private const int HeadLength = Pdu.HeadLength + 1;

    public static byte[] MakeRequest(ushort address, ReadOnlySpan<bool> coils) =>
        Make(FunctionCode.WriteMultipleCoils, new Row(address, coils.Length), MostCoils, Pdu.Pack(coils));

    public static byte[] MakeRequest(ushort address, ReadOnlySpan<ushort> registers) =>
        Make(FunctionCode.WriteMultipleRegisters, new Row(address, registers.Length), MostRegisters, Pdu.Pack(registers));

    /// <summary>What is written into coils; false: count and length do not fit (exception 03).</summary>
    public static bool TryReadRequest(ReadOnlySpan<byte> message, out ushort address, out bool[] coils)
    {
        var isRight = TryReadHead(message, out address, out var count) && count <= MostCoils && message[5] == (count + 7) / 8;
        coils = isRight ? Pdu.Unpack(message[HeadLength..], count) : [];
        return isRight;
    }

    /// <summary>What is written into registers; false: count and length do not fit (exception 03).</summary>
    public static bool TryReadRequest(ReadOnlySpan<byte> message, out ushort address, out ushort[] registers)
    {
        var isRight = TryReadHead(message, out address, out var count) && count <= MostRegisters && message[5] == 2 * count;
        registers = isRight ? Pdu.Unpack(message[HeadLength..]) : [];
        return isRight;
    }

    /// <summary>Confirms a request.</summary>
    /// <param name="request">One that was found right.</param>
    public static byte[] MakeResponse(ReadOnlySpan<byte> request) => request[..Pdu.HeadLength].ToArray();

    /// <summary>Whether a response confirms the request, with the bytes of it.</summary>
    public static Decoded<byte[]> ReadResponse(ReadOnlySpan<byte> message, ReadOnlySpan<byte> request) => Pdu.Echo(message, request);

    private static byte[] Make(FunctionCode function, Row row, int most, byte[] data) => 
        [.. Pdu.Request(function, row, most), (byte)data.Length, .. data];

    private static bool TryReadHead(ReadOnlySpan<byte> message, out ushort address, out int count)
    {
        var isRight = message.Length > HeadLength && message[5] == message.Length - HeadLength;
        (address, count) = isRight ? (Pdu.UInt16(message[1..]), Pdu.UInt16(message[3..])) : default;
        return isRight && count > 0;
    }
}
