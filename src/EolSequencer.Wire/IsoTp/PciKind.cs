namespace EolSequencer.Wire.IsoTp;

/// <summary>The kinds of frames of the transport protocol, by the high half of their first byte.</summary>
internal enum PciKind : byte
{
    Single = 0,
    First = 1,
    Consecutive = 2,
    FlowControl = 3,

    /// <summary>A reserved kind, or a frame that breaks a rule of its kind: to be ignored.</summary>
    Invalid = 4,
}
