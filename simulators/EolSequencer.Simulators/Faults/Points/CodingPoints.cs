using EolSequencer.Model.Judging;
using static EolSequencer.Simulators.Faults.FaultPoint;

namespace EolSequencer.Simulators.Faults.Points;

/// <summary>What is written into units or taught to them, and what plates say.</summary>
internal static class CodingPoints
{
    private static readonly string[] VinKeepers = ["brakes", "restraint", "cluster"];
    private static readonly string[] Plates = ["plate", "stamp", "label"];

    public static IEnumerable<FaultPoint> All =>
    [
        One("write_refused", FaultKind.WrongCoding, StepClass.Safety, "the gateway refuses to store what is written",
            target => target.Network.Find("gateway")!.Quirks.WritesFail = true),
        One("write_lost", FaultKind.WrongCoding, StepClass.Safety, "the gateway confirms what is written and keeps the old value",
            target => target.Network.Find("gateway")!.Quirks.WritesAreLost = true),
        For("vin_copy_missing", FaultKind.WrongCoding, StepClass.Function, "the unit does not keep the number that the gateway passes on", VinKeepers,
            (target, index) => target.Network.Deaf.Add(VinKeepers[index])),
        OneNumber("tyre_circumference", FaultKind.WrongCoding, StepClass.Function, "coded circumference of the tyres", 2510, "mm",
            (target, mm) => target.Van.Body.TyreCircumference = mm),
        One("immobiliser_not_paired", FaultKind.WrongCoding, StepClass.Function, "engine and body do not know each other",
            target => target.Van.Body.IsImmobiliserPaired = false),
        OneNumber("key_count", FaultKind.WrongCoding, StepClass.Function, "so many keys are learned", 1, "",
            (target, count) => target.Van.Body.KeyCount = (int)count),
        One("transport_mode_off", FaultKind.WrongCoding, StepClass.Function, "transport mode was cleared too early",
            target => target.Van.Body.IsInTransportMode = false),
        OneNumber("antenna_current", FaultKind.OpenCircuit, StepClass.Other, "feed current of the antenna amplifier", 12, "mA",
            (target, milliAmps) => target.Van.Body.AntennaMilliAmps = milliAmps),
        OneNumber("modem_time", FaultKind.Delayed, StepClass.Function, "the modem registers that long after ignition on", 600, "s",
            (target, seconds) => target.Van.Body.ModemSeconds = seconds),
        For("plate_differs", FaultKind.WrongPart, StepClass.Safety, "it shows another vehicle number: only a person sees it", Plates,
            (target, plate) => target.Van.Impressions.PlateDiffers = Plates[plate]),
    ];
}
