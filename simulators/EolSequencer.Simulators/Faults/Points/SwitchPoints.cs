using EolSequencer.Model.Judging;
using EolSequencer.Simulators.Physics;
using static EolSequencer.Simulators.Faults.FaultPoint;

namespace EolSequencer.Simulators.Faults.Points;

/// <summary>What the driver's hands turn and press, and what hangs on it: horn, wipers, washer.</summary>
internal static class SwitchPoints
{
    private static readonly string[] Stages = ["slow", "fast"];
    private static readonly string[] Sides = ["left", "right"];

    public static IEnumerable<FaultPoint> All =>
    [
        For("switch_dead", FaultKind.OpenCircuit, StepClass.Safety, "the switch reports nothing", Switches.Names,
            (target, index) => target.Van.Switches.Dead.Add(Switches.Names[index])),
        For("switch_stuck", FaultKind.Stuck, StepClass.Safety, "the switch stays on once it was on", Switches.Names,
            (target, index) => target.Van.Switches.Stuck.Add(Switches.Names[index])),
        One("start_button_dead", FaultKind.OpenCircuit, StepClass.Safety, "the start button does nothing",
            target => target.Van.Ignition.IsButtonDead = true),
        One("ignition_stuck", FaultKind.Stuck, StepClass.Safety, "the ignition does not go off again",
            target => target.Van.Ignition.IsStuckOn = true),
        One("starts_without_brake", FaultKind.WrongCoding, StepClass.Safety, "starting is not refused without the brake pedal",
            target => target.Van.Ignition.StartsWithoutBrake = true),
        One("horn_open", FaultKind.OpenCircuit, StepClass.Safety, "the horn keeps silent and draws nothing",
            target => target.Van.Horn.IsOpen = true),
        OneNumber("horn_current", FaultKind.Drift, StepClass.Safety, "the horn draws another current", 2.4, "A",
            (target, amps) => target.Van.Horn.Amps = amps),
        OneNumber("horn_level", FaultKind.Drift, StepClass.Safety, "the horn is that loud", 91, "dB(A)",
            (target, level) => target.Van.Horn.Level = level),
        ForNumber("wiper_rate", FaultKind.Drift, StepClass.Safety, "the wipers run at another rate", Stages, 17, "1/min",
            (target, stage, rate) => target.Van.Wipers.PerMinute[stage] = rate),
        One("wiper_stages_swapped", FaultKind.Swapped, StepClass.Safety, "slow is fast and fast is slow",
            target => Array.Reverse(target.Van.Wipers.PerMinute)),
        One("wiper_stuck", FaultKind.Stuck, StepClass.Safety, "the wiper motor does not turn",
            target => target.Van.Wipers.IsStuck = true),
        One("park_contact_open", FaultKind.OpenCircuit, StepClass.Safety, "the wipers' park contact never closes",
            target => target.Van.Wipers.IsParkContactOpen = true),
        One("wiper_parks_high", FaultKind.WrongPart, StepClass.Function, "the blades stop above the lower edge: only a person sees it",
            target => target.Van.Wipers.ParksHigh = true),
        For("washer_jet_blocked", FaultKind.Stuck, StepClass.Safety, "no water on that side of the glass: only a person sees it", Sides,
            (target, side) => target.Van.Wipers.BlockedJets[side] = true),
    ];
}
