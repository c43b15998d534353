namespace EolSequencer.Simulators.Instruments;

/// <summary>How the station's instruments misbehave; all is well by default.</summary>
internal sealed class BenchQuirks
{
    public bool MeterIsSilent { get; set; }

    public bool MeterIsOverloaded { get; set; }

    /// <summary>A added to every current.</summary>
    public double MeterOffset { get; set; }

    public bool SoundMeterIsSilent { get; set; }
}
