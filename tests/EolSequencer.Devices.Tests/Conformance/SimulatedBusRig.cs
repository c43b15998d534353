using EolSequencer.Devices.Tests.Kit;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;
using EolSequencer.Simulators;
using EolSequencer.Simulators.Time;

namespace EolSequencer.Devices.Tests.Conformance;

/// <summary>What the suite may ask of the simulated vehicle, over whatever link.</summary>
internal static class SimulatedBusRig
{
    /// <summary>The last one is described but not built in.</summary>
    public static IReadOnlyList<ControlUnit> Fitted { get; } =
    [
        new("gateway", 0x710, 0x718, null, null),
        new("brakes", 0x713, 0x71B, null, null),
        new("cluster", 0x714, 0x71C, null, null),
        new("tow", 0x723, 0x72B, null, null),
    ];

    public static SimulatedVehicle Vehicle(TimeProvider time)
    {
        var options = new Dictionary<string, string>
        {
            ["drive"] = "fwd", ["powertrain"] = "petrol", ["doors"] = "single", ["mirrors"] = "plain", ["rims"] = "steel", ["tow"] = "no",
        };
        var software = new Dictionary<string, string> { ["gateway"] = "FV7-GWB-0412", ["brakes"] = "FV7-BRK-0307", ["cluster"] = "FV7-CLU-0518" };
        return new SimulatedVehicle(new VehicleFacts("GFVRRNFP7VF100231", options, software, new Dictionary<string, string>()), time, seed: 1);
    }

    public static DeviceRig Of(VirtualTime time, IDevice device, Action<bool> setLink)
    {
        Enter(time, device);
        return new DeviceRig
        {
            Time = time,
            Device = device,
            Steady =
            [
                (Describe.Data("cluster", 0xF195, Describe.Text(12, padding: 0x20)), "FV7-CLU-0518"),
                (Describe.Data("brakes", 0xF195, Describe.Text(12, padding: 0x20)), "FV7-BRK-0307"),
            ],
            Indexed = Describe.Data(null, 0xF195, Describe.Text(12, padding: 0x20)),
            ByIndex = [("gateway", "FV7-GWB-0412"), ("brakes", "FV7-BRK-0307"), ("cluster", "FV7-CLU-0518")],
            Silent = Describe.Data("tow", 0x2180, Describe.Number(8)),
            Action = (Describe.Control("gateway", Describe.YesNo, ("", 0x2201)), TruthValue.No),
            SetLink = setLink,
        };
    }

    /// <summary>Outputs are taken over in an extended session only.</summary>
    private static void Enter(VirtualTime time, IDevice device)
    {
        var enter = new ActionRequest(Describe.Act("gateway", ServiceAct.ExtendedSession), null, null, new Dictionary<string, Value>());
        Assert.Null(time.Run(() => device.ActAsync(enter, default).AsTask()).Missing);
    }
}
