namespace EolSequencer.Wire.Obd;

/// <summary>Service 02: values that were stored when a code was set.</summary>
/// <remarks>Source: SAE J1979; the frame number stands behind every parameter number, in request and response.</remarks>
public static class FreezeFrame
{
    private const byte Service = (byte)ObdService.FreezeFrame;

    /// <param name="parameter">What to read.</param>
    /// <param name="frame">0: the frame that emissions rules ask for.</param>
    public static byte[] MakeRequest(byte parameter, byte frame = 0) => [Service, parameter, frame];

    /// <summary>Parameter and frame asked for; false: the message is no such request and gets no answer.</summary>
    public static bool TryReadRequest(ReadOnlySpan<byte> message, out byte parameter, out byte frame)
    {
        var isRight = message.Length == 3 && message[0] == Service;
        (parameter, frame) = isRight ? (message[1], message[2]) : default;
        return isRight;
    }

    public static byte[] MakeResponse(ParameterData parameter, byte frame) =>
        [ObdMessage.PositiveOf(ObdService.FreezeFrame), parameter.Id, frame, .. parameter.Data.Span];

    /// <summary>The parameters of an answer.</summary>
    /// <returns>A fault when one is shorter than the table says, or is none of the table.</returns>
    public static Decoded<IReadOnlyList<ParameterData>> ReadResponse(ReadOnlyMemory<byte> message) =>
        ObdMessage.HeadFault(message.Span, ObdService.FreezeFrame, least: 1) is { } fault
            ? Decoded<IReadOnlyList<ParameterData>>.Faulty(fault)
            : ParameterReader.Read(message[1..], headLength: 2);
}
