namespace EolSequencer.Model.Judging;

/// <summary>Why there is no reading.</summary>
public enum MissingCause
{
    /// <summary>The link to the device is not there.</summary>
    LinkDown,

    /// <summary>Nobody answered in time.</summary>
    Silent,

    /// <summary>The device answered that it will not.</summary>
    Refused,

    /// <summary>The device marked its own value as invalid.</summary>
    InvalidMarker,

    /// <summary>The newest value is too old.</summary>
    Stale,

    /// <summary>The quantity is beyond the measuring range.</summary>
    Overload,

    /// <summary>The value is not a number, or none that a quantity can have.</summary>
    NotFinite,

    /// <summary>The answer holds fewer bytes than it must.</summary>
    ShortAnswer,

    /// <summary>The answer came after its time.</summary>
    Late,
}
