namespace EolSequencer.Wire.Modbus;

/// <summary>Functions 5 and 6: writes one coil or one holding register; the answer repeats the request.</summary>
/// <remarks>Source: MODBUS Application Protocol Specification V1.1b3, 6.5 and 6.6.</remarks>
public static class WriteSingle
{
    private const ushort On = 0xFF00;

    public static byte[] MakeRequest(ushort address, bool isOn) => Pdu.Head(FunctionCode.WriteSingleCoil, address, isOn ? On : (ushort)0);

    public static byte[] MakeRequest(ushort address, ushort register) => Pdu.Head(FunctionCode.WriteSingleRegister, address, register);

    /// <summary>Where a coil is written and what; false: neither FF00 nor 0000, or the length is wrong (exception 03).</summary>
    public static bool TryReadRequest(ReadOnlySpan<byte> message, out ushort address, out bool isOn)
    {
        var isRight = TryReadRequest(message, out address, out ushort value) && value is On or 0;
        isOn = isRight && value == On;
        return isRight;
    }

    /// <summary>Where a register is written and what; false: the length is wrong (exception 03).</summary>
    public static bool TryReadRequest(ReadOnlySpan<byte> message, out ushort address, out ushort register)
    {
        var isRight = message.Length == Pdu.HeadLength;
        (address, register) = isRight ? (Pdu.UInt16(message[1..]), Pdu.UInt16(message[3..])) : default;
        return isRight;
    }

    /// <summary>Whether a response confirms the request, with the bytes of it.</summary>
    public static Decoded<byte[]> ReadResponse(ReadOnlySpan<byte> message, ReadOnlySpan<byte> request) => Pdu.Echo(message, request);
}
