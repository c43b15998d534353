using EolSequencer.Model.Judging;
using EolSequencer.Simulators.Physics;
using static EolSequencer.Simulators.Faults.FaultPoint;

namespace EolSequencer.Simulators.Faults.Points;

/// <summary>Blower, flaps, cooling, heater, seat.</summary>
internal static class ComfortPoints
{
    private static readonly string[] Sides = ["left", "right"];

    public static IEnumerable<FaultPoint> All =>
    [
        OneNumber("blower_current", FaultKind.Drift, StepClass.Function, "the blower draws another current at its top step", 12, "A",
            (target, amps) => target.Van.Climate.FullBlowerAmps = amps),
        For("air_door_stuck", FaultKind.Stuck, StepClass.Function, "the air flap does not move", Climate.Flaps,
            (target, flap) => target.Van.Climate.StuckFlaps[flap] = true),
        For("mix_door_stuck", FaultKind.Stuck, StepClass.Other, "the temperature flap does not move", Sides,
            (target, side) => target.Van.Climate.StuckMix[side] = true),
        ForNumber("mix_door_lag", FaultKind.Drift, StepClass.Other, "the temperature flap stops that far before its target", Sides, 8, "%",
            (target, side, percent) => target.Van.Climate.MixLag[side] = percent),
        For("air_duct_blocked", FaultKind.WrongPart, StepClass.Safety, "no air from that side of the windscreen outlet: only a person notices", Sides,
            (target, side) => target.Van.Climate.BlockedDucts[side] = true),
        One("compressor_dead", FaultKind.OpenCircuit, StepClass.Function, "the compressor does not engage",
            target => target.Van.Climate.IsCompressorDead = true),
        OneNumber("vent_temperature", FaultKind.Drift, StepClass.Other, "the vent cools no further than that", 15, "°C",
            (target, celsius) => target.Van.Climate.CoolestVent = celsius),
        One("heater_switch_dead", FaultKind.OpenCircuit, StepClass.Function, "the rear window heater does not come on",
            target => target.Van.Climate.IsHeaterSwitchDead = true),
        OneNumber("heater_current", FaultKind.OpenCircuit, StepClass.Function, "the rear window heater draws another current", 7, "A",
            (target, amps) => target.Van.Climate.HeaterAmps = amps),
        One("seat_stuck", FaultKind.Stuck, StepClass.Other, "the seat motor turns, the seat stays",
            target => target.Van.Seat.IsStuck = true),
        OneNumber("seat_speed", FaultKind.Delayed, StepClass.Other, "the seat moves that fast", 8, "mm/s",
            (target, speed) => target.Van.Seat.MmPerSecond = speed),
        One("steering_notchy", FaultKind.WrongPart, StepClass.Safety, "the steering turns unevenly: only a person feels it",
            target => target.Van.Impressions.SteeringIsNotchy = true),
    ];
}
