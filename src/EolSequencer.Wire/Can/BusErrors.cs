namespace EolSequencer.Wire.Can;

/// <summary>Errors that a CAN interface reports; several may come at once.</summary>
[Flags]
public enum BusErrors
{
    None = 0,

    /// <summary>Nobody acknowledged a frame.</summary>
    Acknowledge = 1,

    /// <summary>A bit was read other than it was sent.</summary>
    Bit = 2,

    /// <summary>The checksum of a frame was wrong.</summary>
    Checksum = 4,

    /// <summary>A fixed bit had the wrong level.</summary>
    Form = 8,

    /// <summary>More than five equal bits stood in a row.</summary>
    Stuff = 16,

    /// <summary>Frames came faster than the interface could hand them on; some are lost.</summary>
    ReceiveOverflow = 32,

    /// <summary>Frames were handed over faster than the bus took them; some are lost.</summary>
    TransmitOverflow = 64,
}
