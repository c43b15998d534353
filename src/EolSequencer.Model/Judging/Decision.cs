namespace EolSequencer.Model.Judging;

/// <summary>How a measured value near an end of its window is decided.</summary>
public enum Decision
{
    /// <summary>The window alone decides.</summary>
    Simple,

    /// <summary>The uncertainty of the measurement keeps a distance from both ends; see <see cref="GuardedDecision"/>.</summary>
    Guarded,
}
