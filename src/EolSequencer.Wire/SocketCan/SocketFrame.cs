using EolSequencer.Wire.Can;

namespace EolSequencer.Wire.SocketCan;

/// <summary>What a raw CAN socket of Linux has handed over: a data frame, a remote frame, or news of the interface.</summary>
public readonly record struct SocketFrame
{
    /// <summary>The data frame; null for anything else, so nobody who waits for data is answered by it.</summary>
    public CanFrame? Data { get; init; }

    /// <summary>True for a remote frame.</summary>
    public bool IsRemote { get; init; }

    /// <summary>Errors on the bus, from an error frame.</summary>
    public BusErrors Errors { get; init; }

    /// <summary>The controller's state, from an error frame that tells one; null: it tells none.</summary>
    public ControllerState? State { get; init; }

    /// <summary>Why the bytes are no frame; null when they are one.</summary>
    public string? Fault { get; init; }
}
