using EolSequencer.Model.Judging;
using EolSequencer.Simulators.Physics;
using static EolSequencer.Simulators.Faults.FaultPoint;

namespace EolSequencer.Simulators.Faults.Points;

/// <summary>Warning lamps, telltales, chime, display.</summary>
internal static class ClusterPoints
{
    private static readonly string[] Rows = ["upper_row", "lower_row"];

    public static IEnumerable<FaultPoint> All =>
    [
        For("warning_lamp_dead", FaultKind.OpenCircuit, StepClass.Safety, "the warning lamp never comes on", Cluster.Lamps,
            (target, lamp) => target.Van.Cluster.DeadLamps[lamp] = true, HasLamp),
        For("warning_lamp_stuck", FaultKind.Stuck, StepClass.Safety, "the warning lamp does not go out", Cluster.Lamps,
            (target, lamp) => target.Van.Cluster.StuckLamps[lamp] = true, HasLamp),
        ForNumber("lamp_check", FaultKind.Delayed, StepClass.Safety, "the warning lamp's check takes that long", ["abs", "tyre", "restraint"], 9, "s",
            (target, index, seconds) => target.Van.Cluster.CheckSeconds[index switch { 0 => 0, 1 => 5, _ => 3 }] = seconds),
        OneNumber("belt_chime", FaultKind.Drift, StepClass.Safety, "the belt chime sounds for that long", 3, "s",
            (target, seconds) => target.Van.Cluster.ChimeSeconds = seconds),
        For("telltale_dead", FaultKind.OpenCircuit, StepClass.Safety, "the telltale never comes on", Cluster.Telltales,
            (target, telltale) => target.Van.Cluster.DeadTelltales[telltale] = true),
        For("display_row_dark", FaultKind.WrongPart, StepClass.Safety, "a row of the display stays dark: only a person sees it", Rows,
            (target, row) => target.Van.Cluster.DarkRows[row] = true),
        OneNumber("odometer", FaultKind.WrongPart, StepClass.Function, "the odometer has run that far", 130, "km",
            (target, kilometres) => target.Van.Cluster.OdometerKm = kilometres),
    ];

    private static bool HasLamp(Equipment equipment, string? lamp) =>
        equipment.IsElectric ? lamp is not ("engine" or "oil") : lamp is not ("drive" or "pack");
}
