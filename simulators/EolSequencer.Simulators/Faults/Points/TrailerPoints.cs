using EolSequencer.Model.Judging;
using EolSequencer.Simulators.Physics;
using static EolSequencer.Simulators.Faults.FaultPoint;

namespace EolSequencer.Simulators.Faults.Points;

/// <summary>The trailer socket.</summary>
internal static class TrailerPoints
{
    public static IEnumerable<FaultPoint> All =>
    [
        For("trailer_circuit_open", FaultKind.OpenCircuit, StepClass.Safety, "the circuit carries nothing", Trailer.Circuits,
            (target, circuit) => target.Van.Trailer.Amps[circuit] = 0, HasTow),
        ForNumber("trailer_current", FaultKind.Short, StepClass.Safety, "the circuit carries another current", Trailer.Circuits, 3.1, "A",
            (target, circuit, amps) => target.Van.Trailer.Amps[circuit] = amps, HasTow),
        One("trailer_not_seen", FaultKind.OpenCircuit, StepClass.Safety, "the plugged load box is not reported",
            target => target.Van.Trailer.IsDetectionDead = true, equipment => equipment.HasTowCoupling),
        One("trailer_stays_seen", FaultKind.Stuck, StepClass.Safety, "the load box is reported for ever once it was in",
            target => target.Van.Trailer.IsDetectionStuck = true, equipment => equipment.HasTowCoupling),
    ];

    private static bool HasTow(Equipment equipment, string? place) => equipment.HasTowCoupling;
}
