using EolSequencer.Wire.TroubleCodes;

namespace EolSequencer.Wire.Obd;

/// <summary>Services 03, 07 and 0A: stored, pending and permanent codes; and 04, which clears them.</summary>
/// <remarks>
/// Source: SAE J1979 over CAN (ISO 15765-4): a count byte stands before the codes. Zeros behind the counted codes, and
/// codes of two zero bytes, are filling.
/// </remarks>
public static class EmissionsCodes
{
    private const int CodeLength = 2;

    /// <param name="service">03, 07 or 0A; or 04.</param>
    public static byte[] MakeRequest(ObdService service) => [(byte)Checked(service)];

    /// <summary>The service asked for; false: the message is no such request and gets no answer.</summary>
    public static bool TryReadRequest(ReadOnlySpan<byte> message, out ObdService service)
    {
        service = message.Length == 1 ? (ObdService)message[0] : default;
        return IsOfCodes(service);
    }

    public static byte[] MakeClearResponse() => [ObdMessage.PositiveOf(ObdService.ClearCodes)];

    /// <param name="service">03, 07 or 0A.</param>
    /// <param name="codes">At most 255 codes of two bytes.</param>
    public static byte[] MakeResponse(ObdService service, IReadOnlyList<TroubleCode> codes)
    {
        var message = new byte[2 + (CodeLength * codes.Count)];
        message[0] = ObdMessage.PositiveOf(Checked(service));
        message[1] = checked((byte)codes.Count);
        for (var i = 0; i < codes.Count; i++)
        {
            (codes[i] with { FailureType = null }).Write(message.AsSpan(2 + (CodeLength * i)));
        }

        return message;
    }

    /// <summary>The codes of an answer; none is a right answer.</summary>
    /// <param name="message">The answer.</param>
    /// <param name="service">03, 07 or 0A.</param>
    public static Decoded<IReadOnlyList<TroubleCode>> ReadResponse(ReadOnlySpan<byte> message, ObdService service)
    {
        if (ObdMessage.HeadFault(message, Checked(service), least: 2) is { } fault)
        {
            return Decoded<IReadOnlyList<TroubleCode>>.Faulty(fault);
        }

        int count = message[1];
        var rest = message[2..];
        if (rest.Length < CodeLength * count)
        {
            return Decoded<IReadOnlyList<TroubleCode>>.Faulty($"short answer ({rest.Length / CodeLength} of {count} codes)");
        }

        if (rest[(CodeLength * count)..].ContainsAnyExcept((byte)0))
        {
            return Decoded<IReadOnlyList<TroubleCode>>.Faulty($"bytes behind the {count} codes that were counted");
        }

        var codes = new List<TroubleCode>(count);
        for (var i = 0; i < count; i++)
        {
            var code = TroubleCode.ReadTwo(rest[(CodeLength * i)..]);
            if (!code.IsFiller)
            {
                codes.Add(code);
            }
        }

        return codes;
    }

    private static ObdService Checked(ObdService service) =>
        IsOfCodes(service)
            ? service
            : throw new ArgumentOutOfRangeException(nameof(service), service, "a service of trouble codes");

    private static bool IsOfCodes(ObdService service) => service is
        ObdService.StoredCodes or ObdService.PendingCodes or ObdService.PermanentCodes or ObdService.ClearCodes;
}
