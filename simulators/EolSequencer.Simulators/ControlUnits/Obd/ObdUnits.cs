using static EolSequencer.Simulators.ControlUnits.Obd.ObdParameter;

namespace EolSequencer.Simulators.ControlUnits.Obd;

/// <summary>The units of this vehicle that answer emissions services.</summary>
/// <remarks>Formulas after SAE J1979, written from its tables and not taken from the codec that decodes them.</remarks>
internal static class ObdUnits
{
    public static ObdUnit Powertrain { get; } = new(
        [
            Byte(0x04, 255 / 100.0, 0, (van, now) => van.Engine.Runs(now) ? 22 : 0),
            Byte(0x05, 1, 40, (van, now) => van.Engine.CoolantAt(now)),
            Byte(0x06, 1.28, 128, (van, now) => van.Engine.ShortTrimAt(now)),
            Byte(0x07, 1.28, 128, (_, _) => 0),
            Byte(0x0B, 1, 0, (van, now) => van.Engine.ManifoldAt(now)),
            Word(0x0C, 4, (van, now) => van.Engine.Speed(now)),
            Byte(0x0D, 1, 0, (_, _) => 0),
            Byte(0x0E, 2, 128, (van, now) => van.Engine.Runs(now) ? 9 : 0),
            Byte(0x0F, 1, 40, (van, _) => van.Engine.IntakeAir),
            Byte(0x11, 2.55, 0, (van, _) => van.Engine.Throttle),
            Byte(0x1C, 1, 0, (_, _) => 6),
            Word(0x1F, 1, (van, now) => van.Engine.RunningFor(now)?.TotalSeconds ?? 0),
            Word(0x21, 1, (_, _) => 0),
            Byte(0x2F, 2.55, 0, (_, _) => 18),
            Byte(0x33, 1, 0, (_, _) => 101),
            Word(0x42, 1000, (van, now) => van.PowerNet.Voltage(now) + van.PowerNet.ModuleError),
            Byte(0x46, 1, 40, (van, _) => van.Surroundings.Temperature),
            Byte(0x51, 1, 0, (_, _) => 1),
        ],
        "ORPT26-0417A",
        0x5E31_90C7,
        hasVin: true);

    public static ObdUnit Transmission { get; } = new(
        [Byte(0x0D, 1, 0, (_, _) => 0)], "ORGT26-0209C", 0x1B77_04D2, hasVin: false);

    public static ObdUnit ElectricDrive { get; } = new(
        [Byte(0x0D, 1, 0, (_, _) => 0), Byte(0x51, 1, 0, (_, _) => 8)], "ORED26-0102B", 0x90AC_11F8, hasVin: true);
}
