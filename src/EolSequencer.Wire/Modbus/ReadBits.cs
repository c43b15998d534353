namespace EolSequencer.Wire.Modbus;

/// <summary>Functions 1 and 2: reads coils or discrete inputs.</summary>
/// <remarks>Source: MODBUS Application Protocol Specification V1.1b3, 6.1 and 6.2.</remarks>
public static class ReadBits
{
    /// <summary>Most bits of one request.</summary>
    public const int Most = 2000;

    private const int RequestLength = 5;

    /// <param name="function">1 or 2.</param>
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

    public static byte[] MakeResponse(FunctionCode function, ReadOnlySpan<bool> bits)
    {
        var packed = Pdu.Pack(bits);
        return [(byte)function, (byte)packed.Length, .. packed];
    }

    /// <summary>The bits of a response to a request for <paramref name="count"/> of them.</summary>
    public static Decoded<bool[]> ReadResponse(ReadOnlySpan<byte> message, FunctionCode function, int count) =>
        Pdu.DataFault(message, function, (count + 7) / 8) is { } fault
            ? Decoded<bool[]>.Faulty(fault)
            : Pdu.Unpack(message[2..], count);

    private static void Check(FunctionCode function, Row row)
    {
        if (function is not (FunctionCode.ReadCoils or FunctionCode.ReadDiscreteInputs)) throw new ArgumentOutOfRangeException(nameof(function), function, "1 or 2");
        if (!row.IsWithin || row.Count > Most) throw new ArgumentOutOfRangeException(nameof(row), row, $"1 to {Most} within 0 to 65535");
    }
}
