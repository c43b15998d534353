using EolSequencer.Model.Judging;
using EolSequencer.Simulators.Physics;
using static EolSequencer.Simulators.Faults.FaultPoint;

namespace EolSequencer.Simulators.Faults.Points;

/// <summary>Brakes, wheels, steering, distance sensors.</summary>
internal static class ChassisPoints
{
    private static readonly string[] Sides = ["left", "right"];

    public static IEnumerable<FaultPoint> All =>
    [
        One("brake_switch_open", FaultKind.OpenCircuit, StepClass.Safety, "the brake pedal is not reported",
            target => target.Van.Brakes.IsSwitchDead = true),
        OneNumber("pedal_travel", FaultKind.Drift, StepClass.Safety, "the pedal goes that far", 82, "mm",
            (target, mm) => target.Van.Brakes.Travel = mm),
        OneNumber("pedal_sinks", FaultKind.Drift, StepClass.Safety, "the held pedal gives way", 3, "mm/s",
            (target, rate) => target.Van.Brakes.SinkRate = rate),
        One("parking_brake_stuck", FaultKind.Stuck, StepClass.Safety, "the parking brake does not let go",
            target => target.Van.Brakes.IsClampStuck = true),
        One("parking_brake_loose", FaultKind.Stuck, StepClass.Safety, "the parking brake does not clamp again",
            target => target.Van.Brakes.DoesNotClamp = true),
        ForNumber("parking_brake_current", FaultKind.Drift, StepClass.Safety, "the clamping motor's peak current", Sides, 6, "A",
            (target, side, amps) => target.Van.Brakes.ClampAmps[side] = amps),
        One("hydraulic_fails", FaultKind.WrongPart, StepClass.Safety, "the brake unit's own test ends badly",
            target => target.Van.Brakes.HydraulicFails = true),
        One("hydraulic_hangs", FaultKind.Stuck, StepClass.Safety, "the brake unit's own test never ends",
            target => target.Van.Brakes.HydraulicHangs = true),
        ForNumber("tyre_pressure", FaultKind.Drift, StepClass.Safety, "the tyre has another pressure", Wheels.Names, 228, "kPa",
            (target, wheel, kPa) => target.Van.Wheels.Pressure[wheel] = kPa),
        OneNumber("spare_pressure", FaultKind.Drift, StepClass.Safety, "the spare wheel has another pressure", 215, "kPa",
            (target, kPa) => target.Van.Wheels.SparePressure = kPa),
        ForNumber("wheel_speed", FaultKind.Noise, StepClass.Safety, "the standing wheel's sensor reports a speed", Wheels.Names, 0.4, "km/h",
            (target, wheel, speed) => target.Van.Wheels.Speed[wheel] = speed),
        For("wheel_sensor_open", FaultKind.OpenCircuit, StepClass.Safety, "the wheel's speed is marked invalid", Wheels.Names,
            (target, wheel) => target.Van.Wheels.Speed[wheel] = double.NaN),
        OneNumber("steering_zero", FaultKind.Drift, StepClass.Safety, "the straight steering wheel is reported at", 2.4, "deg",
            (target, degrees) => target.Van.Wheels.SteeringAngle = degrees),
        One("wrong_rims", FaultKind.WrongPart, StepClass.Function, "the other kind of rims is bolted on: only a person sees it",
            target => target.Van.Wheels.HasAlloyRims = !target.Van.Wheels.HasAlloyRims),
        OneNumber("coupling_position", FaultKind.Drift, StepClass.Function, "the resting all-wheel coupling stands at", 12, "%",
            (target, percent) => target.Van.Body.CouplingPercent = percent, equipment => equipment.HasAllWheelDrive),
        ForNumber("park_distance", FaultKind.Drift, StepClass.Function, "the distance sensor measures", Surroundings.Boards, 0.4, "m",
            (target, board, metres) => target.Van.Surroundings.BoardDistance[board] = metres),
        For("park_sensor_open", FaultKind.OpenCircuit, StepClass.Function, "the distance sensor's value is marked invalid", Surroundings.Boards,
            (target, board) => target.Van.Surroundings.BoardDistance[board] = double.NaN),
    ];
}
