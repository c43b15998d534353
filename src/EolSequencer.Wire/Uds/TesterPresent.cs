namespace EolSequencer.Wire.Uds;

/// <summary>Service 3E: keeps a session alive, and shows whether a control unit answers at all.</summary>
/// <remarks>Source: ISO 14229-1, TesterPresent; its only sub-function is 0.</remarks>
public static class TesterPresent
{
    private const ServiceId Service = ServiceId.TesterPresent;

    public static byte[] MakeRequest(bool suppressPositive = false) => [(byte)Service, SubFunction.Byte(0, suppressPositive)];

    /// <summary>False: the length is wrong (code 13).</summary>
    /// <param name="message">A request of this service.</param>
    /// <param name="subFunction">0 for a request that is known; else code 12 is due.</param>
    public static bool TryReadRequest(ReadOnlySpan<byte> message, out byte subFunction)
    {
        var isRight = message.Length == 2 && Bytes.IsRequest(message, Service);
        subFunction = isRight ? (byte)(message[1] & SubFunction.ValueBits) : (byte)0;
        return isRight;
    }

    public static byte[] MakeResponse() => [Bytes.PositiveOf(Service), 0];
}
