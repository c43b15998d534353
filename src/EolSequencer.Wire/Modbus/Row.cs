namespace EolSequencer.Wire.Modbus;

/// <summary>A row of coils or registers.</summary>
/// <param name="Address">The first one as it stands on the wire, from 0.</param>
/// <param name="Count">How many.</param>
public readonly record struct Row(ushort Address, int Count)
{
    /// <summary>No address beyond FFFF is named.</summary>
    public bool IsWithin => Count > 0 && Address + Count <= 0x10000;
}
