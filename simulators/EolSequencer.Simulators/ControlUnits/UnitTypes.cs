using EolSequencer.Simulators.ControlUnits.Frames;
using EolSequencer.Simulators.ControlUnits.Obd;
using EolSequencer.Simulators.ControlUnits.Records;

namespace EolSequencer.Simulators.ControlUnits;

/// <summary>The control units of the van orrin, in the order of its vehicle type file.</summary>
internal static class UnitTypes
{
    public static UnitType[] All { get; } =
    [
        new("gateway", 0x710, 0x718)
        {
            Records = GatewayRecords.All,
            Frames =
            [
                new(0x1A0, 20, BodyFrames.Switches), new(0x1A4, 20, BodyFrames.Outputs), new(0x1E8, 50, BodyFrames.Seat),
                new(0x3D0, 200, BodyFrames.Awake), new(0x3E0, 1000, BodyFrames.Surroundings),
            ],
            AnswerTime = Ms(2),
            BootTime = Ms(1600),
        },
        new("brakes", 0x713, 0x71B)
        {
            Records = ChassisRecords.Brakes,
            Routines = [ChassisRecords.HydraulicTest],
            Frames = [new(0x1B0, 10, ChassisFrames.WheelSpeeds), new(0x1B4, 20, ChassisFrames.Brakes)],
            Stopped = van => van.Brakes.ForgetHydraulicTest(),
            BootTime = Ms(1100),
        },
        new("restraint", 0x715, 0x71D) { Records = ChassisRecords.Restraint, AnswerTime = Ms(5), BootTime = Ms(1900) },
        new("cluster", 0x714, 0x71C)
        {
            Records = ChassisRecords.Cluster,
            Frames = [new(0x1D0, 50, ChassisFrames.Cluster)],
            AnswerTime = Ms(4),
            BootTime = Ms(1400),
        },
        new("climate", 0x716, 0x71E) { Records = ChassisRecords.Climate, Frames = [new(0x2A0, 100, ChassisFrames.Climate)] },
        new("steering", 0x712, 0x71A) { Records = CommonRecords.With(), Frames = [new(0x1E0, 20, ChassisFrames.Steering)], BootTime = Ms(1200) },
        new("park_assist", 0x717, 0x71F) { Records = CommonRecords.With(), Frames = [new(0x2B0, 100, ChassisFrames.Distances)], AnswerTime = Ms(6) },
        new("camera", 0x711, 0x719) { Records = CommonRecords.With(), Frames = [new(0x2C0, 50, ChassisFrames.Camera)], AnswerTime = Ms(7), BootTime = Ms(2600) },
        new("door_left", 0x720, 0x728) { Records = ChassisRecords.DoorLeft, Frames = [new(0x1A8, 100, BodyFrames.Positions), new(0x1AC, 100, BodyFrames.WindowCurrents)], AnswerTime = Ms(8), BootTime = Ms(600) },
        new("door_right", 0x721, 0x729) { Records = ChassisRecords.DoorRight, AnswerTime = Ms(8), BootTime = Ms(600) },
        new("powertrain", 0x7E0, 0x7E8)
        {
            IsFitted = equipment => !equipment.IsElectric,
            Records = DriveRecords.Powertrain,
            Frames = [new(0x1C0, 20, DriveFrames.Drive), new(0x1C4, 50, DriveFrames.Engine)],
            Obd = ObdUnits.Powertrain,
            BootTime = Ms(1300),
        },
        new("transmission", 0x7E1, 0x7E9)
        {
            IsFitted = equipment => !equipment.IsElectric,
            Records = DriveRecords.Transmission,
            Obd = ObdUnits.Transmission,
            AnswerTime = Ms(4),
        },
        new("edrive", 0x7E2, 0x7EA)
        {
            IsFitted = equipment => equipment.IsElectric,
            Records = DriveRecords.ElectricDrive,
            Frames = [new(0x1C0, 20, DriveFrames.Drive)],
            Obd = ObdUnits.ElectricDrive,
            BootTime = Ms(1300),
        },
        new("hv_battery", 0x7E3, 0x7EB)
        {
            IsFitted = equipment => equipment.IsElectric,
            Records = DriveRecords.Battery,
            Frames = [new(0x3A0, 10, DriveFrames.HighVoltage)],
            AnswerTime = Ms(4),
            BootTime = Ms(1500),
        },
        new("awd", 0x722, 0x72A) { IsFitted = equipment => equipment.HasAllWheelDrive, Records = DriveRecords.Coupling, AnswerTime = Ms(5) },
        new("tow", 0x723, 0x72B) { IsFitted = equipment => equipment.HasTowCoupling, Records = ChassisRecords.Tow, AnswerTime = Ms(5) },
    ];

    /// <summary>The names of all units.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. All.Select(type => type.Name)];

    private static TimeSpan Ms(int count) => TimeSpan.FromMilliseconds(count);
}
