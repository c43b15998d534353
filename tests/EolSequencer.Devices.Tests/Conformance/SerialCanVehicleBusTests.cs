using EolSequencer.Devices.Can;
using EolSequencer.Devices.Tests.Kit;
using EolSequencer.Devices.VehicleBus;
using EolSequencer.Simulators.Outside;
using EolSequencer.Simulators.Time;

namespace EolSequencer.Devices.Tests.Conformance;

/// <summary>The vehicle bus over a CAN interface on a serial line, against the simulated vehicle behind one.</summary>
public sealed class SerialCanVehicleBusTests : DeviceConformance
{
    protected override DeviceRig MakeRig()
    {
        var time = new VirtualTime(DateTimeOffset.UnixEpoch);
        var line = new FakeLine(time);
        var behind = new SerialCanInterface(SimulatedBusRig.Vehicle(time), line.Give);
        line.Arrived = bytes => behind.Take(bytes);
        var (port, fault) = time.Run(() => SerialCanPort.OpenAsync(line.OpenFor, time, new SerialCanForm(500_000), _ => { }, default).AsTask());
        Assert.Null(fault);
        var device = new VehicleBusDevice("bus", port!, time, SimulatedBusRig.Fitted, link: port);
        return SimulatedBusRig.Of(time, device, line.SetLink) with { LinkReturns = SerialCanPort.AnswerLimit };
    }
}
