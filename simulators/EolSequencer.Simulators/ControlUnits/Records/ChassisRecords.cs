using EolSequencer.Simulators.Physics;
using static EolSequencer.Simulators.ControlUnits.Records.CommonRecords;

namespace EolSequencer.Simulators.ControlUnits.Records;

/// <summary>Brakes, restraint, cluster, climate, doors, trailer socket.</summary>
internal static class ChassisRecords
{
    public static DataRecord[] Brakes { get; } = With(
        Vin,
        Word(0x2702, 1, (unit, _) => unit.Van.Body.TyreCircumference));

    public static Routine HydraulicTest { get; } = new(
        0x0301,
        van => van.Brakes.StartHydraulicTest(),
        van => van.Brakes.HydraulicWasStarted,
        (van, now) => (byte)(!van.Brakes.HydraulicIsDone(now) ? 0 : van.Brakes.HydraulicFails ? 1 : 3));

    public static DataRecord[] Restraint { get; } = With(
        Vin,
        new(0x2301, 8, LoopResistances),
        new(0x2302, 1, (unit, _, record) => record[0] = (byte)(sbyte)Math.Clamp(Math.Round(unit.Van.Restraint.OccupantOffset / 0.1), -128, 126)),
        Byte(0x2303, 1, 0, (unit, _) => unit.Van.Restraint.CrashEvents));

    public static DataRecord[] Cluster { get; } = With(
        Vin,
        new(0x2401, 3, Odometer));

    public static DataRecord[] Climate { get; } = With(
    [
        Position(0x2250, 100, 1, (unit, now) => unit.Van.Climate.BlowerShare(now) * 100, (van, percent) => van.Climate.TakeBlower(percent / 100)),
        .. Flaps(),
        Position(0x2254, 200, 0.5, (unit, now) => unit.Van.Climate.Mix(0, now), (van, percent) => Drive(percent, van.Climate.DriveMix)),
    ]);

    public static DataRecord[] DoorLeft { get; } = With(YesNo(0x2601, (unit, _) => unit.Van.Windows.AreLearned[0]));

    public static DataRecord[] DoorRight { get; } = With(YesNo(0x2601, (unit, _) => unit.Van.Windows.AreLearned[1]));

    public static DataRecord[] Tow { get; } = With(
        new(0x2180, 7, TrailerCurrents),
        Output(0x2280, (unit, now) => unit.Van.Trailer.Current(0, now) > 0, (van, on) => van.Trailer.Take(on)));

    private static IEnumerable<DataRecord> Flaps()
    {
        for (var i = 0; i < Physics.Climate.Flaps.Count; i++)
        {
            var flap = i;
            yield return Position(
                (ushort)(0x2251 + i), 200, 0.5, (unit, now) => unit.Van.Climate.Flap(flap, now),
                (van, percent) => Drive(percent, target => van.Climate.DriveFlap(flap, target)));
        }
    }

    // A flap that is given back stays where it is.
    private static void Drive(double? percent, Action<double> drive)
    {
        if (percent is { } target) drive(target);
    }

    private static void LoopResistances(ControlUnit unit, TimeSpan now, Span<byte> record)
    {
        for (var loop = 0; loop < 8; loop++) record[loop] = Raw.Byte(unit.Van.Restraint.LoopOhms[loop], 0.02);
    }

    private static void TrailerCurrents(ControlUnit unit, TimeSpan now, Span<byte> record)
    {
        for (var circuit = 0; circuit < 7; circuit++) record[circuit] = Raw.Byte(unit.Van.Trailer.Current(circuit, now), 0.02);
    }

    private static void Odometer(ControlUnit unit, TimeSpan now, Span<byte> record)
    {
        var raw = (int)Math.Clamp(Math.Round(unit.Van.Cluster.OdometerKm / 0.1), 0, 0xFF_FFFE);
        (record[0], record[1], record[2]) = ((byte)(raw >> 16), (byte)(raw >> 8), (byte)raw);
    }
}
