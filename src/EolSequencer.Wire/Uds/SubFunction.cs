namespace EolSequencer.Wire.Uds;

/// <summary>The second byte of the services that have one: what to do, and in bit 7 whether a positive response may stay away.</summary>
/// <remarks>Source: ISO 14229-1, sub-function parameter and suppressPosRspMsgIndicationBit.</remarks>
public static class SubFunction
{
    internal const byte SuppressBit = 0x80;
    internal const byte ValueBits = 0x7F;

    /// <summary>Whether requests of a service have a sub-function; 2F has none.</summary>
    public static bool IsPartOf(ServiceId service) => service is
        ServiceId.DiagnosticSessionControl or ServiceId.EcuReset or ServiceId.ReadDtcInformation or
        ServiceId.SecurityAccess or ServiceId.CommunicationControl or ServiceId.RoutineControl or
        ServiceId.TesterPresent or ServiceId.ControlDtcSetting or ServiceId.LinkControl;

    /// <summary>
    /// Whether a positive response to this request is not sent. A negative one is, and after "response pending" the
    /// final one is sent whatever it is (ISO 14229-1, annex A.1).
    /// </summary>
    public static bool IsPositiveSuppressed(ReadOnlySpan<byte> request) =>
        request.Length > 1 && IsPartOf((ServiceId)request[0]) && (request[1] & SuppressBit) != 0;

    internal static byte Byte(byte value, bool suppressPositive) => (byte)(value | (suppressPositive ? SuppressBit : 0));
}
