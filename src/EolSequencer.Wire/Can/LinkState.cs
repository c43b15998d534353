namespace EolSequencer.Wire.Can;

/// <summary>Whether frames can pass between a participant and its bus.</summary>
public enum LinkState
{
    /// <summary>Frames can be sent and received.</summary>
    Up,

    /// <summary>
    /// The controller has switched itself off after too many transmit errors (bus-off, ISO 11898-1 fault confinement).
    /// </summary>
    BusOff,

    /// <summary>Adapter, cable or supply is gone, or the link was closed.</summary>
    Down,
}
