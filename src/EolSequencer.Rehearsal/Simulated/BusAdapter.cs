using EolSequencer.Devices.Adapters;
using EolSequencer.Devices.VehicleBus;
using EolSequencer.Simulators;
using EolSequencer.Simulators.ControlUnits;

namespace EolSequencer.Rehearsal.Simulated;

/// <summary><c>simulated-vehicle</c>: the real vehicle bus device, plugged into the simulated bus.</summary>
internal sealed class BusAdapter(SimulatedVehicle vehicle) : IDeviceAdapter
{
    public string Name => "simulated-vehicle";

    public ValueTask<AdapterOpening> OpenAsync(AdapterRequest request, CancellationToken cancel) => new(AdapterOpening.Open(
        new VehicleBusDevice(request.Binding.Role, vehicle.Port, request.Time, request.Fitted, new Keys())));

    private sealed class Keys : IKeyAlgorithm
    {
        public byte[] KeyOf(string unit, byte level, ReadOnlySpan<byte> seed) => SeedKey.KeyOf(level, seed);
    }
}
