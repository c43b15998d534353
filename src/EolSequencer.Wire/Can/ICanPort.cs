namespace EolSequencer.Wire.Can;

/// <summary>How one participant, a tester or a control unit, is attached to a CAN bus, real or simulated.</summary>
/// <remarks>
/// <para>
/// A <i>stamp</i> here and everywhere in this room is a timestamp of the <see cref="TimeProvider"/> that was handed to
/// the link (<see cref="TimeProvider.GetTimestamp"/>): monotonic, in units of its
/// <see cref="TimeProvider.TimestampFrequency"/>, comparable only with stamps of the same provider. The stamp of a
/// frame is the end of the frame on the bus (its last bit before the intermission), the same for the sender and for
/// every receiver; an adapter that cannot see it gives the earliest moment it can.
/// </para>
/// <para>
/// A port calls its listeners and handlers one at a time, in the order in which the frames ended, never from inside
/// <see cref="SendAsync"/> or <see cref="Listen"/>. They return soon and do not wait. A participant does not hear its
/// own frames.
/// </para>
/// </remarks>
public interface ICanPort
{
    /// <summary>Whether frames can pass at this moment.</summary>
    LinkState State { get; }

    /// <summary>Raised after <see cref="State"/> has changed.</summary>
    event Action<LinkChange>? LinkChanged;

    /// <summary>
    /// Whether listeners with <see cref="Repeats.MayBeSkipped"/> are spared unchanged repeats and told by
    /// <see cref="ICanListener.Silenced"/> when a sender stops. False: every arrival is handed on, and a listener finds
    /// out by its own stale timer.
    /// </summary>
    bool LeavesOutRepeats { get; }

    /// <summary>Puts a frame on the bus and waits until it has gone out.</summary>
    /// <param name="frame">The frame; its bytes stay unchanged from now on.</param>
    /// <param name="cancel">
    /// Withdraws the frame; one that is already on the wire goes out all the same. On a bus on which nobody
    /// acknowledges, this is the only end.
    /// </param>
    /// <returns>
    /// The transmit confirmation with the frame's stamp; or, when the link is or goes down before that, the news that
    /// the frame did not go out. Frames of one port go out in the order of the calls.
    /// </returns>
    /// <exception cref="OperationCanceledException"><paramref name="cancel"/> was cancelled first.</exception>
    ValueTask<Transmission> SendAsync(CanFrame frame, CancellationToken cancel);

    /// <summary>Hands every frame of one identifier that others send to a listener, from now on.</summary>
    /// <param name="id">The identifier, with its format.</param>
    /// <param name="listener">Who is called; one that listens to an identifier twice is called twice.</param>
    /// <param name="repeats">
    /// Whether unchanged repeats may be left out. The first arrival after this call is always handed on.
    /// </param>
    /// <returns>Ends the listening when disposed, at once; a second disposal does nothing.</returns>
    IDisposable Listen(CanId id, ICanListener listener, Repeats repeats);
}
