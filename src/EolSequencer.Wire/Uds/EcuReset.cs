namespace EolSequencer.Wire.Uds;

/// <summary>Service 11: restarts a control unit.</summary>
/// <remarks>Source: ISO 14229-1, ECUReset.</remarks>
public static class EcuReset
{
    private const ServiceId Service = ServiceId.EcuReset;

    public readonly record struct Request(ResetKind Kind, bool SuppressPositive);

    /// <param name="PowerDownTime">
    /// For <see cref="ResetKind.EnableRapidPowerShutDown"/> the byte that tells how long the unit stays off; else null.
    /// </param>
    public readonly record struct Response(ResetKind Kind, byte? PowerDownTime);

    public static byte[] MakeRequest(ResetKind kind, bool suppressPositive = false) =>
        [(byte)Service, SubFunction.Byte((byte)kind, suppressPositive)];

    /// <summary>False: the length is wrong (code 13).</summary>
    public static bool TryReadRequest(ReadOnlySpan<byte> message, out Request request)
    {
        var isRight = message.Length == 2 && Bytes.IsRequest(message, Service);
        request = isRight
            ? new Request((ResetKind)(message[1] & SubFunction.ValueBits), (message[1] & SubFunction.SuppressBit) != 0)
            : default;
        return isRight;
    }

    public static byte[] MakeResponse(ResetKind kind, byte? powerDownTime = null) => powerDownTime is { } time
        ? [Bytes.PositiveOf(Service), (byte)kind, time]
        : [Bytes.PositiveOf(Service), (byte)kind];

    public static Decoded<Response> ReadResponse(ReadOnlySpan<byte> message)
    {
        var needsTime = message.Length > 1 && (ResetKind)message[1] == ResetKind.EnableRapidPowerShutDown;
        return Bytes.HeadFault(message, Service, needsTime ? 3 : 2) is { } fault
            ? Decoded<Response>.Faulty(fault)
            : new Response((ResetKind)message[1], needsTime ? message[2] : null);
    }
}
