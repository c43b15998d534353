using EolSequencer.Devices.Adapters;
using EolSequencer.Devices.VehicleBus;
using EolSequencer.Simulators;

namespace EolSequencer.Rehearsal.Simulated;

/// <summary><c>simulated-vehicle</c>: the real vehicle bus device, plugged into the simulated bus.</summary>
internal sealed class BusAdapter(SimulatedVehicle vehicle) : IDeviceAdapter
{
    public AdapterDescription Description { get; } = new("simulated-vehicle", "the bus of a simulated vehicle", BusSettings.All);

    public ValueTask<AdapterOpening> OpenAsync(AdapterRequest request, CancellationToken cancel) =>
        new(AdapterOpening.Open(new VehicleBusDevice(
            request.Binding.Role, vehicle.Port, request.Time, request.Fitted, new SimulatedKeys(), BusSettings.TimingOf(request.Settings), note: request.Note)));
}
