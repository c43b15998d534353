using System.Globalization;

namespace EolSequencer.Wire.Uds;

/// <summary>The answer <c>7F service code</c>.</summary>
public static class NegativeResponse
{
    internal const byte Mark = 0x7F;

    /// <summary>The bytes of a refusal.</summary>
    public static byte[] Make(byte service, NegativeCode code) => [Mark, service, (byte)code];

    /// <summary>
    /// Whether a control unit that was asked as one of a group keeps this refusal to itself: what it does not have is
    /// answered with silence.
    /// </summary>
    /// <remarks>Source: ISO 14229-1, server response to functionally addressed requests.</remarks>
    public static bool IsSilentInGroup(NegativeCode code) => code is
        NegativeCode.ServiceNotSupported or NegativeCode.SubFunctionNotSupported or NegativeCode.RequestOutOfRange or
        NegativeCode.SubFunctionNotSupportedInActiveSession or NegativeCode.ServiceNotSupportedInActiveSession;

    /// <summary>The code as people look it up: <c>31 requestOutOfRange</c>; an unlisted one as its two digits.</summary>
    public static string Describe(NegativeCode code)
    {
        var digits = ((byte)code).ToString("X2", CultureInfo.InvariantCulture);
        var name = NameOf(code);
        return name is null ? digits : $"{digits} {name}";
    }

    // The standard's own spelling where it is more than the member's name with a small letter.
    private static string? NameOf(NegativeCode code) => code switch
    {
        NegativeCode.RequestCorrectlyReceivedResponsePending => "requestCorrectlyReceived-ResponsePending",
        NegativeCode.ThrottlePedalTooHigh => "throttle/PedalTooHigh",
        NegativeCode.ThrottlePedalTooLow => "throttle/PedalTooLow",
        NegativeCode.BrakeSwitchNotClosed => "brakeSwitch(es)NotClosed",
        _ => Enum.GetName(code) is { } name ? char.ToLowerInvariant(name[0]) + name[1..] : null,
    };
}
