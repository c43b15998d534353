namespace EolSequencer.Wire.Can;

/// <summary>What a listener wants to hear of a frame that is sent in a cycle.</summary>
public enum Repeats
{
    /// <summary>Every arrival.</summary>
    All,

    /// <summary>
    /// A link may leave out arrivals whose bytes are those of the arrival before. Until
    /// <see cref="ICanListener.Silenced"/> is said the sender counts as still sending them in its cycle.
    /// A link that leaves nothing out is right, too.
    /// </summary>
    MayBeSkipped,
}
