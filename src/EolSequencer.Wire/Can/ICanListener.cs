namespace EolSequencer.Wire.Can;

/// <summary>Who is told of arriving frames; see <see cref="ICanPort"/> for stamps and the order of calls.</summary>
public interface ICanListener
{
    /// <summary>A frame of an identifier that was listened for has arrived.</summary>
    /// <param name="frame">The frame; it may be kept.</param>
    /// <param name="stamp">The end of the frame.</param>
    void Received(in CanFrame frame, long stamp);

    /// <summary>The cyclic sender of an identifier has stopped.</summary>
    /// <param name="id">The identifier it was listened for with.</param>
    /// <param name="lastStamp">
    /// The end of the last frame the sender put on the bus, arrivals that were left out included: what a listener's
    /// stale limit counts from.
    /// </param>
    /// <remarks>
    /// Said only to those who listen with <see cref="Repeats.MayBeSkipped"/>, and only by a link that leaves repeats
    /// out; any other link hands on every arrival and leaves the news to the listener's own stale timer. A sender that
    /// starts again is simply received again, its first frame always.
    /// </remarks>
    void Silenced(CanId id, long lastStamp);
}
