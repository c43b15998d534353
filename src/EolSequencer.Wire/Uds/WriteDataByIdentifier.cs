namespace EolSequencer.Wire.Uds;

/// <summary>Service 2E: writes the record of a data identifier.</summary>
/// <remarks>Source: ISO 14229-1, WriteDataByIdentifier.</remarks>
public static class WriteDataByIdentifier
{
    private const ServiceId Service = ServiceId.WriteDataByIdentifier;
    private const int HeadLength = 3;

    /// <param name="Identifier">What is written.</param>
    /// <param name="Record">At least one byte.</param>
    public readonly record struct Request(ushort Identifier, ReadOnlyMemory<byte> Record);

    public static byte[] MakeRequest(ushort identifier, ReadOnlySpan<byte> record) =>
        Bytes.Join([(byte)Service, Bytes.High(identifier), Bytes.Low(identifier)], record);

    /// <summary>False: the length is wrong (code 13).</summary>
    public static bool TryReadRequest(ReadOnlyMemory<byte> message, out Request request)
    {
        var isRight = message.Length > HeadLength && Bytes.IsRequest(message.Span, Service);
        request = isRight ? new Request(Bytes.UInt16(message.Span[1..]), message[HeadLength..]) : default;
        return isRight;
    }

    public static byte[] MakeResponse(ushort identifier) =>
        [Bytes.PositiveOf(Service), Bytes.High(identifier), Bytes.Low(identifier)];
}
