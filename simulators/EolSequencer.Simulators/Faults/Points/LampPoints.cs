using EolSequencer.Model.Judging;
using EolSequencer.Simulators.Physics;
using static EolSequencer.Simulators.Faults.FaultPoint;

namespace EolSequencer.Simulators.Faults.Points;

/// <summary>Lamps, their flasher and the headlamp leveller.</summary>
internal static class LampPoints
{
    private static readonly string[] Sides = ["left", "right"];
    private static readonly string[] Circuits = [.. Lamps.Names];

    private static readonly string[] Seen =
    [
        "low_left", "low_right", "position_left", "position_right", "tail_left", "tail_right", "plate",
        "turn_front_left", "turn_front_right", "turn_rear_left", "turn_rear_right", "stop_left", "stop_right", "stop_high",
    ];

    public static IEnumerable<FaultPoint> All =>
    [
        For("lamp_open", FaultKind.OpenCircuit, StepClass.Safety, "the lamp is dark and draws nothing", Circuits,
            (target, lamp) => target.Van.Lamps[lamp].IsOpen = true),
        ForNumber("lamp_current", FaultKind.Short, StepClass.Safety, "the lamp draws so many times its current", Circuits, 1.6, "",
            (target, lamp, factor) => target.Van.Lamps[lamp].Amps *= factor),
        For("lamp_wet", FaultKind.WrongPart, StepClass.Safety, "water or dirt behind the lens: only a person sees it", Seen,
            (target, lamp) => target.Van.Lamps[Seen[lamp]].LooksWrong = true),
        For("lamps_swapped", FaultKind.Swapped, StepClass.Safety, "a position lamp sits where the daytime lamp belongs, and the other way round", Sides,
            (target, side) => Swap(target.Van.Lamps[4 + side], target.Van.Lamps[6 + side])),
        One("flasher_dead", FaultKind.Stuck, StepClass.Safety, "no turn signal flashes",
            target => target.Van.Flasher.IsDead = true),
        OneNumber("flash_rate", FaultKind.Drift, StepClass.Safety, "the turn signals flash at another rate", 135, "1/min",
            (target, rate) => target.Van.Flasher.PerMinute = rate),
        ForNumber("first_light", FaultKind.Delayed, StepClass.Safety, "the first flash comes that long after the stalk", Sides, 1.4, "s",
            (target, side, seconds) => target.Van.Flasher.FirstLight[side] = TimeSpan.FromSeconds(seconds)),
        OneNumber("flash_lag", FaultKind.Delayed, StepClass.Safety, "the right side flashes behind the left by that share of a beat", 0.4, "",
            (target, share) => target.Van.Flasher.RightLag = share),
        One("leveller_stuck", FaultKind.Stuck, StepClass.Function, "the headlamp leveller does not move",
            target => target.Van.Leveller.IsStuck = true),
    ];

    private static void Swap(LampCircuit left, LampCircuit right) => (left.Amps, right.Amps) = (right.Amps, left.Amps);
}
