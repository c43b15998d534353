using static EolSequencer.Simulators.ControlUnits.Records.CommonRecords;

namespace EolSequencer.Simulators.ControlUnits.Records;

/// <summary>Engine, transmission, electric drive, high-voltage battery, all-wheel coupling.</summary>
internal static class DriveRecords
{
    public static DataRecord[] Powertrain { get; } = With(
        Celsius(0x2110, (unit, now) => unit.Van.Engine.CoolantAt(now)),
        Byte(0x2112, 0.05, 0, (unit, now) => unit.Van.Engine.OilPressureAt(now)),
        Word(0x2114, 1, (unit, _) => unit.Van.Engine.Misfires),
        Word(0x2116, 0.001, (unit, now) => unit.Van.Engine.LambdaAt(now)));

    public static DataRecord[] Transmission { get; } = With(
        Celsius(0x2140, (unit, _) => unit.Van.Engine.GearboxOil));

    public static DataRecord[] ElectricDrive { get; } = With(
        Celsius(0x2150, (unit, _) => unit.Van.ElectricDrive.MotorTemperature),
        Celsius(0x2151, (unit, _) => unit.Van.ElectricDrive.InverterTemperature),
        Word(0x2152, 1, (unit, now) => unit.Van.ElectricDrive.Pump(now)));

    public static DataRecord[] Battery { get; } = With(
        Word(0x2160, 1, (unit, _) => unit.Van.ElectricDrive.Isolation),
        YesNo(0x2161, (unit, _) => !unit.Van.ElectricDrive.IsInterlockOpen),
        Word(0x2162, 1, (unit, _) => unit.Van.ElectricDrive.CellSpread),
        Celsius(0x2163, (unit, _) => unit.Van.ElectricDrive.PackTemperature));

    public static DataRecord[] Coupling { get; } = With(
        Byte(0x2170, 0.5, 0, (unit, _) => unit.Van.Body.CouplingPercent));
}
