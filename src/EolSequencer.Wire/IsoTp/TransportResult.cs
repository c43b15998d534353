namespace EolSequencer.Wire.IsoTp;

/// <summary>How a transfer ended.</summary>
/// <remarks>
/// Source: ISO 15765-2, N_Result. When several apply, the first in this order is reported. The codes with "sender"
/// come from a <see cref="MessageSender"/> only, those with "receiver" from a <see cref="MessageReceiver"/> only.
/// </remarks>
public enum TransportResult
{
    /// <summary>N_OK: all of the message went over.</summary>
    Ok,

    /// <summary>N_TIMEOUT_A: a frame could not be put on the bus within N_As or N_Ar.</summary>
    TimeoutA,

    /// <summary>N_TIMEOUT_Bs, sender: no flow control came within N_Bs.</summary>
    TimeoutBs,

    /// <summary>N_TIMEOUT_Cr, receiver: no consecutive frame came within N_Cr.</summary>
    TimeoutCr,

    /// <summary>N_WRONG_SN, receiver: a consecutive frame had another number than the one due.</summary>
    WrongNumber,

    /// <summary>N_INVALID_FS, sender: a flow control had a reserved status.</summary>
    InvalidFlowStatus,

    /// <summary>N_UNEXP_PDU, receiver: a new message began before this one was complete.</summary>
    UnexpectedFrame,

    /// <summary>N_WFT_OVRN, receiver: it would have had to ask for patience more often than N_WFTmax.</summary>
    WaitOverrun,

    /// <summary>N_BUFFER_OVFLW, sender: the receiver has no room for so long a message.</summary>
    BufferOverflow,

    /// <summary>N_ERROR: anything else.</summary>
    Error,
}
