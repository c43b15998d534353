namespace EolSequencer.Model.Plants;

/// <summary>What becomes of production runs at a station with an instrument whose calibration is not known to be in force.</summary>
public enum OverdueRule
{
    /// <summary>None begins.</summary>
    Refuse,

    /// <summary>They go on, and show it wherever they are shown.</summary>
    Flag,
}
