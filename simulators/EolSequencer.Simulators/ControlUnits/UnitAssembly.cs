using System.Globalization;
using EolSequencer.Simulators.Bus;
using EolSequencer.Simulators.Physics;
using EolSequencer.Simulators.Randomness;
using EolSequencer.Wire.Can;
using EolSequencer.Wire.TroubleCodes;

namespace EolSequencer.Simulators.ControlUnits;

/// <summary>Puts the control units of one vehicle on its bus.</summary>
internal static class UnitAssembly
{
    // The camera has not been calibrated yet; that happens at a later station.
    private static readonly TroubleCode NotCalibrated = new(0x9601, 0x00);

    public static UnitNetwork Build(VehicleFacts facts, Van van, SimulatedCanBus bus, ulong seed)
    {
        var units = new List<ControlUnit>(UnitTypes.All.Length);
        foreach (var type in UnitTypes.All)
        {
            if (type.IsFitted(van.Equipment)) units.Add(Assemble(type, facts, van, bus, seed));
        }

        var network = new UnitNetwork(units);
        foreach (var unit in units) unit.Network = network;
        network.Find("camera")!.Memory.Troubles.Remember(NotCalibrated);
        return network;
    }

    private static ControlUnit Assemble(UnitType type, VehicleFacts facts, Van van, SimulatedCanBus bus, ulong seed)
    {
        var memory = new UnitMemory
        {
            Part = facts.Parts.GetValueOrDefault(type.Name, "0000000000"),
            Software = facts.Software.GetValueOrDefault(type.Name, "000000000000"),
            Serial = SerialOf(new RandomStream(seed, type.Name + ".serial")),
        };
        var unit = new ControlUnit(type, van, bus, memory, seed);
        foreach (var frame in type.Frames)
        {
            // Frames of one cycle time are spread over it, as a network plan does.
            var phase = TimeSpan.FromMicroseconds(frame.Id * 130 % (frame.CycleMs * 1000));
            var write = frame.Write;
            unit.Add(new CyclicFrame(
                bus, unit.Port, CanId.Base(frame.Id), 8, TimeSpan.FromMilliseconds(frame.CycleMs), phase,
                (now, payload) => write(van, now, payload)));
        }

        return unit;
    }

    private static string SerialOf(RandomStream stream) =>
        string.Create(CultureInfo.InvariantCulture, $"F{(char)('A' + stream.Pick(20))}{stream.Pick(100_000_000):D8}");
}
