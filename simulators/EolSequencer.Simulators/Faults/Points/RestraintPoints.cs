using EolSequencer.Model.Judging;
using EolSequencer.Simulators.Physics;
using static EolSequencer.Simulators.Faults.FaultPoint;

namespace EolSequencer.Simulators.Faults.Points;

/// <summary>Airbag circuits, belts, occupant sensing.</summary>
internal static class RestraintPoints
{
    public static IEnumerable<FaultPoint> All =>
    [
        ForNumber("squib_loop", FaultKind.Drift, StepClass.Safety, "resistance of the igniter loop", Restraint.Loops, 4.2, "ohm",
            (target, loop, ohms) => target.Van.Restraint.LoopOhms[loop] = ohms),
        For("squib_loop_open", FaultKind.OpenCircuit, StepClass.Safety, "the igniter loop's resistance is marked invalid", Restraint.Loops,
            (target, loop) => target.Van.Restraint.LoopOhms[loop] = double.NaN),
        OneNumber("occupant_offset", FaultKind.Drift, StepClass.Safety, "the empty passenger seat weighs", 5, "kg",
            (target, kilograms) => target.Van.Restraint.OccupantOffset = kilograms),
        OneNumber("crash_events", FaultKind.WrongPart, StepClass.Safety, "the restraint unit has seen so many crashes", 1, "",
            (target, count) => target.Van.Restraint.CrashEvents = (int)count),
        For("buckle_switch_open", FaultKind.OpenCircuit, StepClass.Safety, "the closed buckle is not reported", Restraint.Seats,
            (target, seat) => target.Van.Restraint.DeadBuckles[seat] = true),
        For("belt_jams", FaultKind.WrongPart, StepClass.Safety, "the belt does not run freely: only a person feels it", Restraint.Seats,
            (target, seat) => target.Van.Restraint.JammedBelts[seat] = true),
    ];
}
