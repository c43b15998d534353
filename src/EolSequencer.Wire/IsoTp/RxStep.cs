using EolSequencer.Wire.Can;

namespace EolSequencer.Wire.IsoTp;

/// <summary>What a receiver wants done after a frame or a timer. Several can apply at once.</summary>
public readonly record struct RxStep
{
    /// <summary>A complete message, at least one byte; empty: none.</summary>
    /// <remarks>It may be kept; a single frame's message lies in the frame itself.</remarks>
    public ReadOnlyMemory<byte> Message { get; init; }

    /// <summary>A flow control to be sent; null: none. A listener that only watches drops it.</summary>
    public CanFrame? Reply { get; init; }

    /// <summary>Why a reception ended without a message; null: none did. Its bytes are gone.</summary>
    public TransportResult? Aborted { get; init; }

    /// <summary>What becomes of the timer.</summary>
    public RxTimer Timer { get; init; }

    /// <summary>For people: what was due and what came, or why a frame was ignored; null: nothing to say.</summary>
    public string? Detail { get; init; }
}
