using EolSequencer.Model.Devices;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Devices.Adapters;

/// <summary>Binds a role of a station file to hardware or to a simulator.</summary>
public interface IDeviceAdapter
{
    /// <summary>The name that station files use, such as <c>scpi</c>.</summary>
    string Name { get; }

    /// <summary>Opens a device for one vehicle. Wrong settings and devices that do not open are results.</summary>
    ValueTask<AdapterOpening> OpenAsync(AdapterRequest request, CancellationToken cancel);
}

/// <summary>What an adapter is to open.</summary>
/// <param name="Binding">The role, its settings as written, its instrument.</param>
/// <param name="Kind">What a sequence may ask of the device.</param>
/// <param name="Fitted">The control units that this vehicle has.</param>
public sealed record AdapterRequest(
    RoleBinding Binding, DeviceKind Kind, Order Order, IReadOnlyList<ControlUnit> Fitted, TimeProvider Time)
{
    /// <summary>Told what whoever looks after the station should know; it is judged from nowhere.</summary>
    public Action<string> Note { get; init; } = _ => { };
}

/// <summary>An open device, or why there is none.</summary>
/// <param name="Device">Null when it did not open.</param>
/// <param name="Fault">Null when it did: what was found, what was expected, what to try.</param>
public sealed record AdapterOpening(IDevice? Device, string? Fault)
{
    /// <summary>It is open.</summary>
    public static AdapterOpening Open(IDevice device) => new(device, null);

    /// <summary>It did not open.</summary>
    public static AdapterOpening Refused(string fault) => new(null, fault);
}
