using EolSequencer.Model.Judging;
using EolSequencer.Simulators.Physics;
using static EolSequencer.Simulators.Faults.FaultPoint;

namespace EolSequencer.Simulators.Faults.Points;

/// <summary>Doors, hood, locks, windows, mirrors.</summary>
internal static class DoorPoints
{
    private static readonly string[] Sides = ["left", "right"];

    public static IEnumerable<FaultPoint> All =>
    [
        For("door_contact_open", FaultKind.OpenCircuit, StepClass.Safety, "the contact never reports the open door", Doors.Names,
            (target, door) => target.Van.Doors.DeadContacts[door] = true, HasDoor),
        For("door_stays_ajar", FaultKind.Stuck, StepClass.Safety, "the door does not close", Doors.Names,
            (target, door) => target.Van.Doors.StayOpen[door] = true, HasDoor),
        One("hood_contact_open", FaultKind.OpenCircuit, StepClass.Safety, "the contact never reports the open hood",
            target => target.Van.Doors.IsHoodContactDead = true),
        One("hood_stays_open", FaultKind.Stuck, StepClass.Safety, "the hood does not close",
            target => target.Van.Doors.HoodStaysOpen = true),
        For("lock_dead", FaultKind.OpenCircuit, StepClass.Safety, "the lock motor does not move", Doors.Names.Take(Doors.Locks),
            (target, door) => target.Van.Doors.DeadLocks[door] = true),
        For("lock_stuck", FaultKind.Stuck, StepClass.Safety, "the lock does not open again", Doors.Names.Take(Doors.Locks),
            (target, door) => target.Van.Doors.StuckLocks[door] = true),
        ForNumber("window_travel", FaultKind.Delayed, StepClass.Function, "the window needs that long for its whole way", Sides, 7.5, "s",
            (target, side, seconds) => target.Van.Windows.Travel[side] = seconds),
        ForNumber("window_current", FaultKind.Drift, StepClass.Function, "the window runs hard: its motor draws that much on the way down", Sides, 9, "A",
            (target, side, amps) => target.Van.Windows.Amps[side] = amps),
        For("window_stuck", FaultKind.Stuck, StepClass.Function, "the motor turns, the window stays", Sides,
            (target, side) => target.Van.Windows.AreStuck[side] = true),
        For("window_motor_stuck", FaultKind.Short, StepClass.Function, "the motor is reported on for ever once it ran", Sides,
            (target, side) => target.Van.Windows.MotorsStuckOn[side] = true),
        For("window_not_learned", FaultKind.WrongCoding, StepClass.Function, "the drive does not know its end stops", Sides,
            (target, side) => target.Van.Windows.AreLearned[side] = false),
        For("mirror_stuck", FaultKind.Stuck, StepClass.Function, "the mirror drive does not move", Mirrors.Names,
            (target, axis) => target.Van.Mirrors.PerSecond[axis] = 0),
        ForNumber("mirror_speed", FaultKind.Delayed, StepClass.Function, "the mirror drive moves that fast", Mirrors.Names, 3, "%/s",
            (target, axis, speed) => target.Van.Mirrors.PerSecond[axis] = speed),
        ForNumber("mirror_offset", FaultKind.Drift, StepClass.Function, "the mirror stops that far beside its target", Mirrors.Names, 8, "%",
            (target, axis, percent) => target.Van.Mirrors.Offset[axis] = percent),
        One("mirrors_swapped", FaultKind.Swapped, StepClass.Function, "the left request moves the right mirror",
            target => target.Van.Mirrors.AreSwapped = true),
    ];

    private static bool HasDoor(Equipment equipment, string? door) => door != "rear_second" || equipment.HasTwoRearDoors;
}
