namespace EolSequencer.Wire.Obd;

/// <summary>Service 01: the present values of up to six parameters.</summary>
/// <remarks>
/// Source: SAE J1979. A unit answers with those of the parameters it supports, and keeps silent when it has none of them.
/// </remarks>
public static class CurrentData
{
    /// <summary>The most parameters of one request.</summary>
    public const int Most = 6;

    private const byte Service = (byte)ObdService.CurrentData;

    /// <param name="parameters">1 to 6.</param>
    public static byte[] MakeRequest(params ReadOnlySpan<byte> parameters)
    {
        ArgumentOutOfRangeException.ThrowIfZero(parameters.Length);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(parameters.Length, Most);
        return [Service, .. parameters];
    }

    /// <summary>The parameters asked for; false: the message is no such request and gets no answer.</summary>
    public static bool TryReadRequest(ReadOnlyMemory<byte> message, out ReadOnlyMemory<byte> parameters)
    {
        var isRight = message.Length is > 1 and <= 1 + Most && message.Span[0] == Service;
        parameters = isRight ? message[1..] : default;
        return isRight;
    }

    public static byte[] MakeResponse(params ReadOnlySpan<ParameterData> parameters)
    {
        var length = 1;
        foreach (var parameter in parameters)
        {
            length += 1 + parameter.Data.Length;
        }

        var message = new byte[length];
        message[0] = ObdMessage.PositiveOf(ObdService.CurrentData);
        var at = 1;
        foreach (var (id, data) in parameters)
        {
            message[at] = id;
            data.Span.CopyTo(message.AsSpan(at + 1));
            at += 1 + data.Length;
        }

        return message;
    }

    /// <summary>The parameters of an answer, in its order.</summary>
    /// <returns>A fault when one is shorter than the table says, or is none of the table.</returns>
    public static Decoded<IReadOnlyList<ParameterData>> ReadResponse(ReadOnlyMemory<byte> message) =>
        ObdMessage.HeadFault(message.Span, ObdService.CurrentData, least: 1) is { } fault
            ? Decoded<IReadOnlyList<ParameterData>>.Faulty(fault)
            : ParameterReader.Read(message[1..], headLength: 1);
}
