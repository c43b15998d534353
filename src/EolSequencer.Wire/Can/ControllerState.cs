namespace EolSequencer.Wire.Can;

/// <summary>How much a CAN controller still takes part (ISO 11898-1, fault confinement), better first.</summary>
public enum ControllerState
{
    /// <summary>It takes part in full.</summary>
    Active,

    /// <summary>An error counter has reached 96.</summary>
    Warning,

    /// <summary>An error counter is above 127: it disturbs nobody any more.</summary>
    Passive,

    /// <summary>The transmit error counter is above 255: it has switched itself off.</summary>
    BusOff,
}
