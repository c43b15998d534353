using EolSequencer.Simulators.Faults;
using EolSequencer.Simulators.Time;

namespace EolSequencer.Simulators.Tests;

/// <summary>Vehicles for tests.</summary>
internal static class Vans
{
    /// <summary>A number of an unassigned maker with a valid check digit.</summary>
    public const string Vin = "TESTVXN06AA000017";

    public static Dictionary<string, string> Petrol { get; } = new()
    {
        ["drive"] = "awd", ["powertrain"] = "petrol", ["doors"] = "double", ["mirrors"] = "heated", ["rims"] = "alloy", ["tow"] = "yes",
    };

    public static Dictionary<string, string> Electric { get; } = new()
    {
        ["drive"] = "fwd", ["powertrain"] = "electric", ["doors"] = "single", ["mirrors"] = "plain", ["rims"] = "steel", ["tow"] = "no",
    };

    public static VehicleFacts Facts(Dictionary<string, string> options) => new(
        Vin, options,
        new Dictionary<string, string> { ["gateway"] = "GW2604170100", ["brakes"] = "BR2603020200" },
        new Dictionary<string, string> { ["gateway"] = "F710000417", ["brakes"] = "F713000302" });

    public static (VirtualTime Time, SimulatedVehicle Vehicle) New(params string[] faults) => New(Petrol, 1, faults);

    public static (VirtualTime Time, SimulatedVehicle Vehicle) New(Dictionary<string, string> options, ulong seed, params string[] faults)
    {
        var time = new VirtualTime(DateTimeOffset.UnixEpoch);
        return (time, new SimulatedVehicle(Facts(options), time, seed, faults.Select(Fault)));
    }

    public static InjectedFault Fault(string text)
    {
        var parse = FaultText.Parse(text);
        Assert.True(parse.IsRight, parse.Why);
        return parse.Fault;
    }
}
