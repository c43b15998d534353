namespace EolSequencer.Wire.Modbus;

/// <summary>Functions 3 and 4: reads holding or input registers.</summary>
/// <remarks>Source: MODBUS Application Protocol Specification V1.1b3, 6.3 and 6.4.</remarks>
public static class ReadRegisters
{
    /// <summary>Most registers of one request.</summary>
    public const int Most = 125;

    /// <param name="function">3 or 4.</param>
    public static byte[] MakeRequest(FunctionCode function, Row row)
    {
        if (function is not (FunctionCode.ReadHoldingRegisters or FunctionCode.ReadInputRegisters)) throw new ArgumentOutOfRangeException(nameof(function), function, "3 or 4");
        return Pdu.Request(function, row, Most);
    }

    /// <summary>What a request asks for; false: its length or count is wrong (exception 03).</summary>
    public static bool TryReadRequest(ReadOnlySpan<byte> message, out Row row) => Pdu.TryReadRequest(message, Most, out row);

    public static byte[] MakeResponse(FunctionCode function, ReadOnlySpan<ushort> registers) => Pdu.Response(function, Pdu.Pack(registers));

    /// <summary>The registers of a response to a request for <paramref name="count"/> of them.</summary>
    public static Decoded<ushort[]> ReadResponse(ReadOnlySpan<byte> message, FunctionCode function, int count) =>
        Pdu.DataFault(message, function, 2 * count) is { } fault
            ? Decoded<ushort[]>.Faulty(fault)
            : Pdu.Unpack(message[2..]);
}
