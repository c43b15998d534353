namespace EolSequencer.Model.Plants;

/// <summary>What becomes of production runs at a station that is not known to measure right: an instrument whose calibration is over, a check that was not passed.</summary>
public enum OverdueRule
{
    /// <summary>None begins.</summary>
    Refuse,

    /// <summary>They go on, and show it wherever they are shown.</summary>
    Flag,
}
