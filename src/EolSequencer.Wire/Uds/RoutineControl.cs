namespace EolSequencer.Wire.Uds;

/// <summary>Service 31: starts and stops a routine and fetches its results.</summary>
/// <remarks>Source: ISO 14229-1, RoutineControl.</remarks>
public static class RoutineControl
{
    private const ServiceId Service = ServiceId.RoutineControl;
    private const int HeadLength = 4;

    /// <summary>What is asked of a routine.</summary>
    public enum Act : byte
    {
        Start = 0x01,
        Stop = 0x02,
        RequestResults = 0x03,
    }

    /// <param name="Act">What is asked.</param>
    /// <param name="Identifier">The routine.</param>
    /// <param name="Options">What the routine is given; may be empty.</param>
    /// <param name="SuppressPositive">Whether a positive response may stay away.</param>
    public readonly record struct Request(Act Act, ushort Identifier, ReadOnlyMemory<byte> Options, bool SuppressPositive);

    public static byte[] MakeRequest(Act act, ushort identifier, ReadOnlySpan<byte> options = default, bool suppressPositive = false) =>
        Bytes.Join([(byte)Service, SubFunction.Byte((byte)act, suppressPositive), Bytes.High(identifier), Bytes.Low(identifier)], options);

    /// <summary>False: the length is wrong (code 13).</summary>
    public static bool TryReadRequest(ReadOnlyMemory<byte> message, out Request request)
    {
        var bytes = message.Span;
        var isRight = bytes.Length >= HeadLength && Bytes.IsRequest(bytes, Service);
        request = isRight
            ? new Request(
                (Act)(bytes[1] & SubFunction.ValueBits),
                Bytes.UInt16(bytes[2..]),
                message[HeadLength..],
                (bytes[1] & SubFunction.SuppressBit) != 0)
            : default;
        return isRight;
    }

    public static byte[] MakeResponse(Act act, ushort identifier, ReadOnlySpan<byte> status = default) =>
        Bytes.Join([Bytes.PositiveOf(Service), (byte)act, Bytes.High(identifier), Bytes.Low(identifier)], status);

    /// <summary>What the routine gave back: an optional info byte and its status; may be empty.</summary>
    public static Decoded<ReadOnlyMemory<byte>> ReadResponse(ReadOnlyMemory<byte> message) =>
        Bytes.HeadFault(message.Span, Service, HeadLength) is { } fault
            ? Decoded<ReadOnlyMemory<byte>>.Faulty(fault)
            : message[HeadLength..];
}
