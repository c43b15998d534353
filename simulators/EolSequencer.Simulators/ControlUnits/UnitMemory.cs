namespace EolSequencer.Simulators.ControlUnits;

/// <summary>What one unit keeps beyond the state of the vehicle: who it is, and what was written into it.</summary>
internal sealed class UnitMemory
{
    /// <summary>Part number, ten characters.</summary>
    public required string Part { get; set; }

    /// <summary>Software number, twelve characters.</summary>
    public required string Software { get; set; }

    /// <summary>Serial number, ten characters.</summary>
    public required string Serial { get; set; }

    /// <summary>Vehicle number; blank from the supplier.</summary>
    public string Vin { get; set; } = "";

    /// <summary>Variant coding; eight zeros from the supplier. Only the gateway has one.</summary>
    public string Coding { get; set; } = "00000000";

    public TroubleMemory Troubles { get; } = new();
}
