namespace EolSequencer.Wire.Modbus;

/// <summary>Functions 1 and 2: reads coils or discrete inputs.</summary>
/// <remarks>Source: MODBUS Application Protocol Specification V1.1b3, 6.1 and 6.2.</remarks>
public static class ReadBits
{
    /// <summary>Most bits of one request.</summary>
    public const int Most = 2000;

    /// <param name="function">1 or 2.</param>
    public static byte[] MakeRequest(FunctionCode function, Row row)
    {
        if (function is not (FunctionCode.ReadCoils or FunctionCode.ReadDiscreteInputs)) throw new ArgumentOutOfRangeException(nameof(function), function, "1 or 2");
        return Pdu.Request(function, row, Most);
    }

    /// <summary>What a request asks for; false: its length or count is wrong (exception 03).</summary>
    public static bool TryReadRequest(ReadOnlySpan<byte> message, out Row row) => Pdu.TryReadRequest(message, Most, out row);

    public static byte[] MakeResponse(FunctionCode function, ReadOnlySpan<bool> bits) => Pdu.Response(function, Pdu.Pack(bits));

    /// <summary>The bits of a response to a request for <paramref name="count"/> of them.</summary>
    public static Decoded<bool[]> ReadResponse(ReadOnlySpan<byte> message, FunctionCode function, int count) =>
        Pdu.DataFault(message, function, (count + 7) / 8) is { } fault
            ? Decoded<bool[]>.Faulty(fault)
            : Pdu.Unpack(message[2..], count);
}
