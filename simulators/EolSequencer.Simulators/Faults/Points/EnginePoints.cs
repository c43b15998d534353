using EolSequencer.Model.Judging;
using EolSequencer.Simulators.Physics;
using static EolSequencer.Simulators.Faults.FaultPoint;

namespace EolSequencer.Simulators.Faults.Points;

/// <summary>The petrol engine, its transmission, and what is seen or heard under the hood.</summary>
internal static class EnginePoints
{
    private static readonly string[] Fluids = ["coolant", "oil", "brake_fluid", "fuel"];

    public static IEnumerable<FaultPoint> All =>
    [
        One("starter_dead", FaultKind.OpenCircuit, StepClass.Function, "the starter does not turn",
            target => target.Van.Engine.StarterIsDead = true, IsPetrol),
        One("does_not_fire", FaultKind.WrongPart, StepClass.Function, "the starter turns, the engine does not run",
            target => target.Van.Engine.DoesNotFire = true, IsPetrol),
        OneNumber("start_time", FaultKind.Delayed, StepClass.Function, "the starter has to turn that long", 2.8, "s",
            (target, seconds) => target.Van.Engine.CrankSeconds = seconds, IsPetrol),
        OneNumber("oil_lamp_time", FaultKind.Delayed, StepClass.Safety, "the oil lamp goes out that long after the start", 7, "s",
            (target, seconds) => target.Van.Engine.OilLampSeconds = seconds, IsPetrol),
        OneNumber("start_flare", FaultKind.Drift, StepClass.Function, "the engine races at its start up to", 2600, "1/min",
            (target, speed) => target.Van.Engine.FlareSpeed = speed, IsPetrol),
        OneNumber("idle_speed", FaultKind.Drift, StepClass.Function, "the engine idles at", 905, "1/min",
            (target, speed) => target.Van.Engine.IdleSpeed = speed, IsPetrol),
        OneNumber("idle_hunting", FaultKind.Noise, StepClass.Function, "the idle swings to either side by", 90, "1/min",
            (target, swing) => target.Van.Engine.Hunting = swing, IsPetrol),
        OneNumber("oil_pressure", FaultKind.Drift, StepClass.Safety, "oil pressure at idle", 0.8, "bar",
            (target, bar) => target.Van.Engine.OilPressure = bar, IsPetrol),
        OneNumber("short_trim", FaultKind.Drift, StepClass.Function, "short-term mixture correction", 19, "%",
            (target, percent) => target.Van.Engine.ShortTrim = percent, IsPetrol),
        OneNumber("lambda", FaultKind.Drift, StepClass.Function, "air ratio at idle", 1.06, "",
            (target, lambda) => target.Van.Engine.Lambda = lambda, IsPetrol),
        OneNumber("coolant", FaultKind.Drift, StepClass.Function, "coolant before the start", 72, "°C",
            (target, celsius) => target.Van.Engine.Coolant = celsius, IsPetrol),
        OneNumber("intake_air", FaultKind.Drift, StepClass.Function, "intake air", 58, "°C",
            (target, celsius) => target.Van.Engine.IntakeAir = celsius, IsPetrol),
        OneNumber("manifold_pressure", FaultKind.Drift, StepClass.Function, "pressure in the manifold at idle", 68, "kPa",
            (target, kPa) => target.Van.Engine.Manifold = kPa, IsPetrol),
        OneNumber("throttle", FaultKind.Drift, StepClass.Function, "throttle at idle", 31, "%",
            (target, percent) => target.Van.Engine.Throttle = percent, IsPetrol),
        OneNumber("misfires", FaultKind.Noise, StepClass.Function, "misfires counted", 3, "",
            (target, count) => target.Van.Engine.Misfires = (int)count, IsPetrol),
        OneNumber("gearbox_oil", FaultKind.Drift, StepClass.Function, "gearbox oil", 92, "°C",
            (target, celsius) => target.Van.Engine.GearboxOil = celsius, IsPetrol),
        One("drive_noise", FaultKind.WrongPart, StepClass.Other, "the drive ticks or squeals: only a person hears it",
            target => target.Van.Impressions.DriveIsNoisy = true),
        For("leak", FaultKind.WrongPart, StepClass.Safety, "a joint is wet: only a person sees it", Fluids,
            (target, fluid) => target.Van.Impressions.Leak = Fluids[fluid], (equipment, fluid) => !equipment.IsElectric || fluid is "coolant" or "brake_fluid"),
    ];

    private static bool IsPetrol(Equipment equipment) => !equipment.IsElectric;
}
