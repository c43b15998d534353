using EolSequencer.Simulators.ControlUnits.Records;
using EolSequencer.Simulators.Physics;

namespace EolSequencer.Simulators.ControlUnits;

/// <summary>What all control units of one kind have in common.</summary>
/// <param name="Name">As in the vehicle type file.</param>
/// <param name="Request">11-bit identifier of requests to it.</param>
/// <param name="Response">11-bit identifier of its responses.</param>
internal sealed record UnitType(string Name, uint Request, uint Response)
{
    /// <summary>Whether a vehicle has it.</summary>
    public Func<Equipment, bool> IsFitted { get; init; } = _ => true;

    /// <summary>What it can be read, written and controlled by, in the order of the identifiers.</summary>
    public DataRecord[] Records { get; init; } = [];

    /// <summary>The routines it can run.</summary>
    public Routine[] Routines { get; init; } = [];

    /// <summary>The frames it sends by itself.</summary>
    public FrameType[] Frames { get; init; } = [];

    /// <summary>Whether it answers emissions services (SAE J1979).</summary>
    public Obd.ObdUnit? Obd { get; init; }

    /// <summary>From the end of a request to the beginning of the answer, at the least.</summary>
    public TimeSpan AnswerTime { get; init; } = TimeSpan.FromMilliseconds(3);

    /// <summary>From a reset to the first answer.</summary>
    public TimeSpan BootTime { get; init; } = TimeSpan.FromMilliseconds(900);

    /// <summary>What the vehicle forgets when the unit loses its supply; null: nothing.</summary>
    public Action<Van>? Stopped { get; init; }

    /// <summary>The record of an identifier, or null.</summary>
    public DataRecord? Find(ushort identifier)
    {
        foreach (var record in Records)
        {
            if (record.Identifier == identifier) return record;
        }

        return null;
    }

    /// <summary>The routine of an identifier, or null.</summary>
    public Routine? FindRoutine(ushort identifier) => Array.Find(Routines, routine => routine.Identifier == identifier);
}
