namespace EolSequencer.Simulators.Faults;

/// <summary>What kind of thing is wrong.</summary>
public enum FaultKind
{
    /// <summary>A wire or contact does not conduct.</summary>
    OpenCircuit,

    /// <summary>More current than there should be.</summary>
    Short,

    /// <summary>Something does not move or does not change any more.</summary>
    Stuck,

    /// <summary>Two things take each other's place.</summary>
    Swapped,

    /// <summary>A value lies off, steadily.</summary>
    Drift,

    /// <summary>A value is restless.</summary>
    Noise,

    /// <summary>It comes, but too late.</summary>
    Delayed,

    /// <summary>A control unit, an instrument or the whole bus says nothing or says no.</summary>
    SilentUnit,

    /// <summary>What was written or taught is wrong or missing.</summary>
    WrongCoding,

    /// <summary>Another part than ordered is fitted, or it is badly made.</summary>
    WrongPart,

    /// <summary>The person does something else than asked.</summary>
    OperatorError,
}
