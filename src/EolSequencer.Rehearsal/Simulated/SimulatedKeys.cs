using EolSequencer.Devices.VehicleBus;
using EolSequencer.Simulators.ControlUnits;

namespace EolSequencer.Rehearsal.Simulated;

/// <summary>The invented keys of the simulated vehicle's control units.</summary>
internal sealed class SimulatedKeys : IKeyAlgorithm
{
    public byte[] KeyOf(string unit, byte level, ReadOnlySpan<byte> seed) => SeedKey.KeyOf(level, seed);
}
