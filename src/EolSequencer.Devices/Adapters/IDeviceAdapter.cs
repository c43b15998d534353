using EolSequencer.Model.Devices;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Devices.Adapters;

/// <summary>Binds a role of a station file to hardware or to a simulator.</summary>
public interface IDeviceAdapter
{
    /// <summary>Its name and the settings it knows; they are checked before anything else is asked.</summary>
    AdapterDescription Description { get; }

    /// <summary>
    /// What the device can do with these settings; null: whatever the device kind describes, as for a vehicle bus, whose
    /// vehicle type says how each channel is obtained.
    /// </summary>
    DeviceOffer? OfferOf(CheckedSettings settings) => null;

    /// <summary>What the role holds while it is open, so that two roles do not want the same; null: nothing others could want.</summary>
    LinkUse? LinkOf(CheckedSettings settings) => null;

    /// <summary>Opens a device for one vehicle. Devices that do not open, and settings that contradict each other, are results.</summary>
    ValueTask<AdapterOpening> OpenAsync(AdapterRequest request, CancellationToken cancel);
}

/// <summary>What an adapter is to open.</summary>
/// <param name="Binding">The role, where it is bound, its instrument.</param>
/// <param name="Settings">The settings, known and of their forms.</param>
/// <param name="Kind">What a sequence may ask of the device.</param>
/// <param name="Fitted">The control units that this vehicle has.</param>
public sealed record AdapterRequest(
    RoleBinding Binding, CheckedSettings Settings, DeviceKind Kind, Order Order, IReadOnlyList<ControlUnit> Fitted, TimeProvider Time)
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
