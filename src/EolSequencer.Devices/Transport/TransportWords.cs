using EolSequencer.Wire.IsoTp;

namespace EolSequencer.Devices.Transport;

/// <summary>Results of the transport protocol as people read them.</summary>
internal static class TransportWords
{
    public static string Of(TransportResult result) => result switch
    {
        TransportResult.Ok => "ok",
        TransportResult.TimeoutA => "N_TIMEOUT_A: transmit timeout",
        TransportResult.TimeoutBs => "N_TIMEOUT_Bs: no flow control",
        TransportResult.TimeoutCr => "N_TIMEOUT_Cr: transport timeout",
        TransportResult.WrongNumber => "N_WRONG_SN: sequence error",
        TransportResult.InvalidFlowStatus => "N_INVALID_FS: reserved flow status",
        TransportResult.UnexpectedFrame => "N_UNEXP_PDU: a new message began",
        TransportResult.WaitOverrun => "N_WFT_OVRN: asked for patience too often",
        TransportResult.BufferOverflow => "N_BUFFER_OVFLW: receiver overflow",
        _ => "N_ERROR",
    };
}
