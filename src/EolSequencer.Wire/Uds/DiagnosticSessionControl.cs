namespace EolSequencer.Wire.Uds;

/// <summary>Service 10: changes the session and names the response times of the new one.</summary>
/// <remarks>Source: ISO 14229-1:2013 and later; earlier editions had no timing in the response.</remarks>
public static class DiagnosticSessionControl
{
    private const ServiceId Service = ServiceId.DiagnosticSessionControl;

    public readonly record struct Request(DiagnosticSession Session, bool SuppressPositive);

    public readonly record struct Response(DiagnosticSession Session, SessionTiming Timing);

    public static byte[] MakeRequest(DiagnosticSession session, bool suppressPositive = false) =>
        [(byte)Service, SubFunction.Byte((byte)session, suppressPositive)];

    /// <summary>False: the length is wrong (code 13).</summary>
    public static bool TryReadRequest(ReadOnlySpan<byte> message, out Request request)
    {
        var isRight = message.Length == 2 && Bytes.IsRequest(message, Service);
        request = isRight
            ? new Request((DiagnosticSession)(message[1] & SubFunction.ValueBits), (message[1] & SubFunction.SuppressBit) != 0)
            : default;
        return isRight;
    }

    /// <param name="session">The new session.</param>
    /// <param name="timing">Its times; a fraction of a step is dropped.</param>
    public static byte[] MakeResponse(DiagnosticSession session, SessionTiming timing)
    {
        var p2 = checked((ushort)timing.P2.TotalMilliseconds);
        var p2Star = checked((ushort)(timing.P2Star.TotalMilliseconds / 10));
        return [Bytes.PositiveOf(Service), (byte)session, Bytes.High(p2), Bytes.Low(p2), Bytes.High(p2Star), Bytes.Low(p2Star)];
    }

    public static Decoded<Response> ReadResponse(ReadOnlySpan<byte> message)
    {
        if (Bytes.HeadFault(message, Service, least: 6) is { } fault)
        {
            return Decoded<Response>.Faulty(fault);
        }

        var timing = new SessionTiming(
            TimeSpan.FromMilliseconds(Bytes.UInt16(message[2..])),
            TimeSpan.FromMilliseconds(Bytes.UInt16(message[4..]) * 10));
        return new Response((DiagnosticSession)message[1], timing);
    }
}
