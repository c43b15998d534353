using EolSequencer.Model.Judging;
using EolSequencer.Simulators.Physics;
using static EolSequencer.Simulators.Faults.FaultPoint;

namespace EolSequencer.Simulators.Faults.Points;

/// <summary>The electric drive and its high-voltage side.</summary>
internal static class TractionPoints
{
    public static IEnumerable<FaultPoint> All =>
    [
        One("interlock_open", FaultKind.OpenCircuit, StepClass.Safety, "the high-voltage interlock is open",
            target => target.Van.ElectricDrive.IsInterlockOpen = true, IsElectric),
        One("never_ready", FaultKind.Stuck, StepClass.Safety, "the drive does not become ready",
            target => target.Van.ElectricDrive.NeverReady = true, IsElectric),
        OneNumber("precharge_time", FaultKind.Delayed, StepClass.Safety, "precharge reaches 95 % after", 1.3, "s",
            (target, seconds) => target.Van.ElectricDrive.PrechargeSeconds = seconds, IsElectric),
        OneNumber("isolation", FaultKind.Short, StepClass.Safety, "isolation of the high-voltage side", 420, "ohm/V",
            (target, value) => target.Van.ElectricDrive.Isolation = value, IsElectric),
        OneNumber("pack_voltage", FaultKind.Drift, StepClass.Safety, "voltage of the pack", 328, "V",
            (target, volts) => target.Van.ElectricDrive.PackVoltage = volts, IsElectric),
        OneNumber("link_drop", FaultKind.OpenCircuit, StepClass.Safety, "the link stays below the pack by", 9, "V",
            (target, volts) => target.Van.ElectricDrive.LinkDrop = volts, IsElectric),
        OneNumber("motor_temperature", FaultKind.Drift, StepClass.Function, "temperature of the motor", 74, "°C",
            (target, celsius) => target.Van.ElectricDrive.MotorTemperature = celsius, IsElectric),
        OneNumber("inverter_temperature", FaultKind.Drift, StepClass.Function, "temperature of the inverter", 71, "°C",
            (target, celsius) => target.Van.ElectricDrive.InverterTemperature = celsius, IsElectric),
        OneNumber("pack_temperature", FaultKind.Drift, StepClass.Function, "temperature of the pack", 47, "°C",
            (target, celsius) => target.Van.ElectricDrive.PackTemperature = celsius, IsElectric),
        OneNumber("coolant_pump", FaultKind.Drift, StepClass.Function, "speed of the coolant pump", 640, "1/min",
            (target, speed) => target.Van.ElectricDrive.PumpSpeed = speed, IsElectric),
        OneNumber("cell_spread", FaultKind.Drift, StepClass.Function, "highest minus lowest cell", 44, "mV",
            (target, milliVolts) => target.Van.ElectricDrive.CellSpread = milliVolts, IsElectric),
    ];

    private static bool IsElectric(Equipment equipment) => equipment.IsElectric;
}
