namespace EolSequencer.Wire.Uds;

/// <summary>Service 85: stops and resumes the storing of trouble codes.</summary>
/// <remarks>Source: ISO 14229-1, ControlDTCSetting.</remarks>
public static class ControlDtcSetting
{
    private const ServiceId Service = ServiceId.ControlDtcSetting;

    /// <summary>Whether codes are stored.</summary>
    public enum Setting : byte
    {
        On = 0x01,
        Off = 0x02,
    }

    /// <param name="Setting">Whether codes are to be stored.</param>
    /// <param name="Record">Which codes it is about; empty: all.</param>
    /// <param name="SuppressPositive">Whether a positive response may stay away.</param>
    public readonly record struct Request(Setting Setting, ReadOnlyMemory<byte> Record, bool SuppressPositive);

    public static byte[] MakeRequest(Setting setting, ReadOnlySpan<byte> record = default, bool suppressPositive = false) =>
        Bytes.Join([(byte)Service, SubFunction.Byte((byte)setting, suppressPositive)], record);

    /// <summary>False: the length is wrong (code 13).</summary>
    public static bool TryReadRequest(ReadOnlyMemory<byte> message, out Request request)
    {
        var bytes = message.Span;
        var isRight = bytes.Length >= 2 && Bytes.IsRequest(bytes, Service);
        request = isRight
            ? new Request((Setting)(bytes[1] & SubFunction.ValueBits), message[2..], (bytes[1] & SubFunction.SuppressBit) != 0)
            : default;
        return isRight;
    }

    public static byte[] MakeResponse(Setting setting) => [Bytes.PositiveOf(Service), (byte)setting];
}
