namespace EolSequencer.Wire.IsoTp;

/// <summary>What a receiver tells the sender; 3 to 15 are reserved.</summary>
internal enum FlowStatus : byte
{
    Continue = 0,
    Wait = 1,
    Overflow = 2,
}
