using EolSequencer.Wire.Can;

namespace EolSequencer.Wire.SerialCan;

/// <summary>One line of the serial-line form of CAN.</summary>
public readonly record struct SerialCanLine(SerialCanKind Kind)
{
    /// <summary>The frame of <see cref="SerialCanKind.Frame"/>; of <see cref="SerialCanKind.Remote"/> its identifier alone.</summary>
    public CanFrame Frame { get; init; }

    /// <summary>What <see cref="SerialCanKind.Errors"/> tells.</summary>
    public BusErrors Errors { get; init; }

    /// <summary>What <see cref="SerialCanKind.State"/> tells.</summary>
    public ControllerState State { get; init; }

    /// <summary>Characters of <see cref="SerialCanKind.Other"/> and <see cref="SerialCanKind.Garbled"/>; null otherwise.</summary>
    public string? Text { get; init; }
}
