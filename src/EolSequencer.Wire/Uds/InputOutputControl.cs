namespace EolSequencer.Wire.Uds;

/// <summary>Service 2F: takes an input or output over from a control unit and gives it back.</summary>
/// <remarks>Source: ISO 14229-1, InputOutputControlByIdentifier. Its fourth byte is no sub-function.</remarks>
public static class InputOutputControl
{
    private const ServiceId Service = ServiceId.InputOutputControlByIdentifier;
    private const int HeadLength = 4;

    /// <param name="Identifier">The input or output.</param>
    /// <param name="Parameter">Who is to have it.</param>
    /// <param name="State">The state to be set, perhaps with a mask behind; empty when none is.</param>
    public readonly record struct Request(ushort Identifier, ControlParameter Parameter, ReadOnlyMemory<byte> State);

    public static byte[] MakeRequest(ushort identifier, ControlParameter parameter, ReadOnlySpan<byte> state = default) =>
        Bytes.Join([(byte)Service, Bytes.High(identifier), Bytes.Low(identifier), (byte)parameter], state);

    /// <summary>False: the length is wrong (code 13).</summary>
    public static bool TryReadRequest(ReadOnlyMemory<byte> message, out Request request)
    {
        var isRight = message.Length >= HeadLength && Bytes.IsRequest(message.Span, Service);
        request = isRight
            ? new Request(Bytes.UInt16(message.Span[1..]), (ControlParameter)message.Span[3], message[HeadLength..])
            : default;
        return isRight;
    }

    /// <param name="identifier">The input or output.</param>
    /// <param name="parameter">As in the request.</param>
    /// <param name="state">The state it has really taken.</param>
    public static byte[] MakeResponse(ushort identifier, ControlParameter parameter, ReadOnlySpan<byte> state) =>
        Bytes.Join([Bytes.PositiveOf(Service), Bytes.High(identifier), Bytes.Low(identifier), (byte)parameter], state);

    /// <summary>The state that the input or output has really taken; it may differ from what was asked for, or be empty.</summary>
    public static Decoded<ReadOnlyMemory<byte>> ReadResponse(ReadOnlyMemory<byte> message) =>
        Bytes.HeadFault(message.Span, Service, HeadLength) is { } fault
            ? Decoded<ReadOnlyMemory<byte>>.Faulty(fault)
            : message[HeadLength..];
}
