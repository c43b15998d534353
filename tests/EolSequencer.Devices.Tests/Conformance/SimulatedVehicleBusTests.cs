using EolSequencer.Devices.Tests.Kit;
using EolSequencer.Devices.VehicleBus;
using EolSequencer.Simulators.Time;

namespace EolSequencer.Devices.Tests.Conformance;

/// <summary>The vehicle bus against the simulated vehicle: control units with timing of their own on a bus with its load.</summary>
public sealed class SimulatedVehicleBusTests : DeviceConformance
{
    protected override DeviceRig MakeRig()
    {
        var time = new VirtualTime(DateTimeOffset.UnixEpoch);
        var link = new PulledPlug(SimulatedBusRig.Vehicle(time).Port, time);
        return SimulatedBusRig.Of(time, new VehicleBusDevice("bus", link, time, SimulatedBusRig.Fitted), link.Set);
    }
}
