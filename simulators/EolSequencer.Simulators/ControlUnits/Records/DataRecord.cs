using EolSequencer.Simulators.Physics;
using EolSequencer.Wire.Uds;

namespace EolSequencer.Simulators.ControlUnits.Records;

/// <summary>Writes the present bytes of a record.</summary>
internal delegate void RecordReader(ControlUnit unit, TimeSpan now, Span<byte> record);

/// <summary>Keeps new bytes of a record, or says why not.</summary>
internal delegate NegativeCode RecordWriter(ControlUnit unit, ReadOnlySpan<byte> record);

/// <summary>Takes an output over with a state of one byte or, with null, gives it back.</summary>
internal delegate void OutputTaker(Van van, byte? state);

/// <summary>The record of one data identifier.</summary>
/// <param name="Identifier">The identifier.</param>
/// <param name="Length">Its bytes.</param>
/// <param name="Read">What they are.</param>
internal sealed record DataRecord(ushort Identifier, int Length, RecordReader Read)
{
    /// <summary>Null: it cannot be written.</summary>
    public RecordWriter? Write { get; init; }

    /// <summary>The security level that writing wants; 0: none.</summary>
    public byte WriteLevel { get; init; }

    /// <summary>Null: it cannot be controlled.</summary>
    public OutputTaker? Take { get; init; }

    /// <summary>The largest state that can be asked for.</summary>
    public byte HighestState { get; init; } = 1;
}
