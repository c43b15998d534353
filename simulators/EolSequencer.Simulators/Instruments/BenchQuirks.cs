namespace EolSequencer.Simulators.Instruments;

/// <summary>How the station's instruments misbehave; all is well by default.</summary>
internal sealed class BenchQuirks
{
    public bool MeterIsSilent { get; set; }

    public bool MeterIsOverloaded { get; set; }

    /// <summary>A added to every current.</summary>
    public double MeterOffset { get; set; }

    /// <summary>The meter cannot be set to zero.</summary>
    public bool MeterDoesNotZero { get; set; }

    public bool SoundMeterIsSilent { get; set; }

    /// <summary>The line takes nothing over.</summary>
    public bool LineIsDeaf { get; set; }
}
