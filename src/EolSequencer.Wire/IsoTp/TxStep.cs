using EolSequencer.Wire.Can;

namespace EolSequencer.Wire.IsoTp;

/// <summary>What a sender wants done after a confirmation, a flow control or a timer.</summary>
public readonly record struct TxStep
{
    /// <summary>
    /// A frame to be put on the bus; then <see cref="MessageSender.Confirm"/>, or <see cref="MessageSender.Fail"/> when it
    /// does not go out within N_As. Null: none.
    /// </summary>
    public CanFrame? Frame { get; init; }

    /// <summary>How the transfer ended; null: it goes on.</summary>
    public TransportResult? Ended { get; init; }

    /// <summary>What becomes of the timer.</summary>
    public TxTimer Timer { get; init; }

    /// <summary>The shortest time from the end of the frame before to the next one, with <see cref="TxTimer.Gap"/>.</summary>
    public TimeSpan Gap { get; init; }

    /// <summary>For people: what was awaited, or why a frame was ignored; null: nothing to say.</summary>
    public string? Detail { get; init; }
}
