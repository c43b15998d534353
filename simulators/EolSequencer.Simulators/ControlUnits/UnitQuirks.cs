using EolSequencer.Wire.Uds;

namespace EolSequencer.Simulators.ControlUnits;

/// <summary>How one unit misbehaves on the bus; all is well by default.</summary>
internal sealed class UnitQuirks
{
    /// <summary>Added to every answer without a word of warning.</summary>
    public TimeSpan ExtraDelay { get; set; }

    /// <summary>How many requests are still answered with "busy, repeat request".</summary>
    public int BusyAnswers { get; set; }

    /// <summary>Says "response pending" for ever.</summary>
    public bool PendsForEver { get; set; }

    /// <summary>Bytes that a read record is short of.</summary>
    public int MissingBytes { get; set; }

    /// <summary>Refuses every read.</summary>
    public NegativeCode ReadRefusal { get; set; }

    /// <summary>Refuses every write at its end.</summary>
    public bool WritesFail { get; set; }

    /// <summary>Confirms writes and keeps the old value.</summary>
    public bool WritesAreLost { get; set; }

    /// <summary>Refuses every session but the default one.</summary>
    public bool RefusesSession { get; set; }

    /// <summary>Refuses to restart.</summary>
    public bool RefusesReset { get; set; }

    /// <summary>Refuses to let the tester take outputs over.</summary>
    public bool RefusesOutputs { get; set; }

    /// <summary>Refuses to give outputs back.</summary>
    public bool KeepsOutputs { get; set; }

    /// <summary>Refuses to clear its trouble codes.</summary>
    public bool ClearFails { get; set; }
}
