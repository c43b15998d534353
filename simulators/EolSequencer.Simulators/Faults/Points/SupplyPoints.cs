using EolSequencer.Model.Judging;
using static EolSequencer.Simulators.Faults.FaultPoint;

namespace EolSequencer.Simulators.Faults.Points;

/// <summary>Battery, charging, ground.</summary>
internal static class SupplyPoints
{
    public static IEnumerable<FaultPoint> All =>
    [
        OneNumber("battery_voltage", FaultKind.Drift, StepClass.Function, "the battery rests at another voltage", 12.2, "V",
            (target, volts) => target.Van.PowerNet.RestVoltage = volts),
        OneNumber("crank_voltage", FaultKind.Drift, StepClass.Function, "the voltage dips deeper at the starter's first turn", 9.2, "V",
            (target, volts) => target.Van.PowerNet.CrankVoltage = volts, equipment => !equipment.IsElectric),
        OneNumber("charging_voltage", FaultKind.Drift, StepClass.Function, "the running drive charges with another voltage", 13.1, "V",
            (target, volts) => target.Van.PowerNet.ChargingVoltage = volts),
        OneNumber("charging_ripple", FaultKind.Noise, StepClass.Function, "the charging voltage is restless, from peak to peak", 0.8, "V",
            (target, volts) => target.Van.PowerNet.Ripple = volts),
        OneNumber("ground_resistance", FaultKind.OpenCircuit, StepClass.Function, "a poor ground strap between body and battery", 4.5, "mohm",
            (target, milliOhms) => target.Van.PowerNet.GroundMilliOhms = milliOhms),
        OneNumber("module_voltage", FaultKind.Drift, StepClass.Function, "the engine's own voltage measurement is off by", -1.6, "V",
            (target, volts) => target.Van.PowerNet.ModuleError = volts, equipment => !equipment.IsElectric),
        OneNumber("lamp_feed_sensor", FaultKind.Drift, StepClass.Function, "the body's own measurement of the lamp supply is off by", 0.9, "A",
            (target, amps) => target.Van.PowerNet.LampFeedError = amps),
        OneNumber("shop_temperature", FaultKind.Drift, StepClass.Other, "the shop is at another temperature", 14, "°C",
            (target, celsius) => target.Van.Surroundings.Temperature = celsius),
    ];
}
