namespace EolSequencer.Wire.Obd;

/// <summary>Heads of emissions messages, and which bytes of a request an answer repeats.</summary>
internal static class ObdMessage
{
    public static byte PositiveOf(ObdService service) => (byte)((byte)service + 0x40);

    public static bool IsService(byte service) => Enum.IsDefined((ObdService)service);

    public static string? HeadFault(ReadOnlySpan<byte> message, ObdService service, int least)
    {
        if (message.Length == 0 || message[0] != PositiveOf(service))
        {
            return $"no positive response of {service}";
        }

        return message.Length < least ? $"short answer ({message.Length} of {least} bytes)" : null;
    }

    /// <summary>
    /// Whether a positive response of the right service belongs to a request. A unit may leave out parameters that it
    /// does not support, so the first it names must be one of those asked for.
    /// </summary>
    public static bool Repeats(ReadOnlySpan<byte> request, ReadOnlySpan<byte> message) => (ObdService)request[0] switch
    {
        ObdService.CurrentData => message.Length > 1 && request[1..].Contains(message[1]),
        ObdService.VehicleInformation => message.Length > 1 && request.Length > 1 && request[1] == message[1],
        ObdService.FreezeFrame => message.Length > 2 && NamesFrame(request, message[1], message[2]),
        _ => true,
    };

    private static bool NamesFrame(ReadOnlySpan<byte> request, byte id, byte frame)
    {
        for (var i = 1; i + 1 < request.Length; i += 2)
        {
            if (request[i] == id && request[i + 1] == frame)
            {
                return true;
            }
        }

        return false;
    }
}
