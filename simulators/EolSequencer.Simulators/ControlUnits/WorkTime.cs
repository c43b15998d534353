using EolSequencer.Wire.Uds;

namespace EolSequencer.Simulators.ControlUnits;

/// <summary>How long units work on a request beyond the time that any answer takes.</summary>
internal static class WorkTime
{
    private static readonly TimeSpan MemoryWrite = TimeSpan.FromMilliseconds(130);
    private static readonly TimeSpan CodesCleared = TimeSpan.FromMilliseconds(90);
    private static readonly TimeSpan RoutineBegun = TimeSpan.FromMilliseconds(12);

    public static TimeSpan Of(ReadOnlySpan<byte> request) => (ServiceId)request[0] switch
    {
        ServiceId.WriteDataByIdentifier => MemoryWrite,
        ServiceId.ClearDiagnosticInformation => CodesCleared,
        ServiceId.RoutineControl => RoutineBegun,
        _ => TimeSpan.Zero,
    };
}
