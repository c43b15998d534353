namespace EolSequencer.Wire.Uds;

/// <summary>Service 28: switches the ordinary frames of a control unit on and off.</summary>
/// <remarks>Source: ISO 14229-1, CommunicationControl and its communicationType.</remarks>
public static class CommunicationControl
{
    private const ServiceId Service = ServiceId.CommunicationControl;

    /// <summary>What is switched.</summary>
    public enum Control : byte
    {
        EnableBoth = 0x00,
        EnableReceptionOnly = 0x01,
        EnableTransmissionOnly = 0x02,
        DisableBoth = 0x03,
    }

    /// <summary>Which frames; the high half of the byte names a network, 0 all of them and F the one asked over.</summary>
    [Flags]
    public enum Messages : byte
    {
        Normal = 0x01,
        NetworkManagement = 0x02,
    }

    /// <param name="Control">What is switched.</param>
    /// <param name="Messages">Which frames.</param>
    /// <param name="Network">0 to 15.</param>
    /// <param name="SuppressPositive">Whether a positive response may stay away.</param>
    public readonly record struct Request(Control Control, Messages Messages, int Network, bool SuppressPositive);

    public static byte[] MakeRequest(Control control, Messages messages, int network = 0, bool suppressPositive = false)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(network);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(network, 15);
        return [(byte)Service, SubFunction.Byte((byte)control, suppressPositive), (byte)((network << 4) | (byte)messages)];
    }

    /// <summary>False: the length is wrong (code 13).</summary>
    public static bool TryReadRequest(ReadOnlySpan<byte> message, out Request request)
    {
        var isRight = message.Length == 3 && Bytes.IsRequest(message, Service);
        request = isRight
            ? new Request(
                (Control)(message[1] & SubFunction.ValueBits),
                (Messages)(message[2] & 0x3),
                message[2] >> 4,
                (message[1] & SubFunction.SuppressBit) != 0)
            : default;
        return isRight;
    }

    public static byte[] MakeResponse(Control control) => [Bytes.PositiveOf(Service), (byte)control];
}
