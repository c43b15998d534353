namespace EolSequencer.Wire.IsoTp;

/// <summary>How long the shells around sender and receiver wait.</summary>
/// <remarks>Source: ISO 15765-2, network layer timing parameters; 1000 ms each unless a network agrees on other values.</remarks>
public sealed record TransportTimers
{
    /// <summary>N_As and N_Ar: from handing a frame to the link to its transmit confirmation.</summary>
    public TimeSpan Confirmation { get; init; } = TimeSpan.FromMilliseconds(1000);

    /// <summary>N_Bs: from the confirmation of a first frame or of the last frame of a block to the flow control.</summary>
    public TimeSpan FlowControl { get; init; } = TimeSpan.FromMilliseconds(1000);

    /// <summary>N_Cr: from the confirmation of a flow control, or from a consecutive frame, to the next consecutive frame.</summary>
    public TimeSpan NextFrame { get; init; } = TimeSpan.FromMilliseconds(1000);
}
