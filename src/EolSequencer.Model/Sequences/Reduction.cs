namespace EolSequencer.Model.Sequences;

/// <summary>How the readings of a <c>sample</c> become one value.</summary>
public enum Reduction
{
    /// <summary>The smallest.</summary>
    Min,
    /// <summary>The largest.</summary>
    Max,
    /// <summary>The arithmetic mean, to 12 significant digits.</summary>
    Mean,
    /// <summary>The middle value; of an even number the mean of the two in the middle.</summary>
    Median,
    /// <summary>The first in time.</summary>
    First,
    /// <summary>The last in time.</summary>
    Last,
    /// <summary>Largest minus smallest.</summary>
    Range,
    /// <summary>How many readings came; has no unit.</summary>
    Count,
}
