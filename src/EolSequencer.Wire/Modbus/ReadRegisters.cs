namespace EolSequencer.Wire.Modbus;

/// <summary>Functions 3 and 4: reads holding or input registers.</summary>
/// <remarks>Source: MODBUS Application Protocol Specification V1.1b3, 6.3 and 6.4.</remarks>
public static class ReadRegisters
{
    /// <summary>Most registers of one request.</summary>
    public const int Most = 125;

    private const int RequestLength = 5;

    /// <param name="function">3 or 4.</param>
    public static byte[] MakeRequest(FunctionCode function, Row row)
    {
        Check(function, row);
        return Pdu.Head(function, row.Address, (ushort)row.Count);
    }

    /// <summary>What a request asks for; false: its length or count is wrong (exception 03).</summary>
    public static bool TryReadRequest(ReadOnlySpan<byte> message, out Row row)
    {
        row = message.Length == RequestLength ? new Row(Pdu.UInt16(message[1..]), Pdu.UInt16(message[3..])) : default;
        return row.Count is > 0 and <= Most;
    }

    public static byte[] MakeResponse(FunctionCode function, ReadOnlySpan<ushort> registers)
    {
        var packed = Pdu.Pack(registers);
        return [(byte)function, (byte)packed.Length, .. packed];
    }

    /// <summary>The registers of a response to a request for <paramref name="count"/> of them.</summary>
    public static Decoded<ushort[]> ReadResponse(ReadOnlySpan<byte> message, FunctionCode function, int count) =>
        Pdu.DataFault(message, function, 2 * count) is { } fault
            ? Decoded<ushort[]>.Faulty(fault)
            : Pdu.Unpack(message[2..]);

    private static void Check(FunctionCode function, Row row)
    {
        if (function is not (FunctionCode.ReadHoldingRegisters or FunctionCode.ReadInputRegisters)) throw new ArgumentOutOfRangeException(nameof(function), function, "3 or 4");
        if (!row.IsWithin || row.Count > Most) throw new ArgumentOutOfRangeException(nameof(row), row, $"1 to {Most} within 0 to 65535");
    }
}
