using EolSequencer.Devices.Adapters;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Station.Running;

/// <summary>Opens the devices of a station one by one, for a run or to see whether they are there. Each role is opened once.</summary>
/// <param name="fitted">The control units that this vehicle has.</param>
/// <param name="note">Told what whoever looks after the station should know.</param>
internal sealed class DeviceOpening(
    StationFile station, Order order, IReadOnlyList<ControlUnit> fitted, AdapterRegistry adapters, TimeProvider time, Action<string> note)
{
    private readonly Dictionary<string, (string Role, string Adapter, bool IsShared)> _links = new(StringComparer.Ordinal);

    /// <summary>The device of a role, or why there is none: place, what was found, what to do.</summary>
    public async ValueTask<(IDevice? Device, string? Fault)> OpenAsync(DeviceRole role, CancellationToken cancel)
    {
        if (station.Find(role.Role) is not { } binding)
        {
            return (null, $"station '{station.Id}' binds no adapter to the role '{role.Role}' ({role.Kind.Id}); add it under devices");
        }

        var at = binding.Adapter.Place;
        if (adapters.Find(binding.Adapter.Adapter) is not { } adapter)
        {
            return (null, $"{at}: there is no adapter '{binding.Adapter.Adapter}'; there are {string.Join(", ", adapters.Names)}");
        }

        if (CheckedSettings.Read(adapter.Description, binding.Adapter, out var odd) is not { } settings) return (null, $"{at}: {role.Role}: {odd}");
        if ((adapter.OfferOf(settings)?.Misfit(role.Kind) ?? Taken(role.Role, adapter, settings)) is { } misfit) return (null, $"{at}: {role.Role}: {misfit}");
        var request = new AdapterRequest(binding, settings, role.Kind, order, fitted, time) { Note = said => note($"{role.Role}: {said}") };
        var opening = await adapter.OpenAsync(request, cancel);
        return opening.Device is null ? (null, $"{at}: {role.Role}: {opening.Fault}") : (opening.Device, null);
    }

    private string? Taken(string role, IDeviceAdapter adapter, CheckedSettings settings)
    {
        if (adapter.LinkOf(settings) is not { } link) return null;
        var name = adapter.Description.Name;
        if (_links.TryAdd(link.Name, (role, name, link.IsShared))) return null;
        var first = _links[link.Name];
        return link.IsShared && first.IsShared && first.Adapter == name
            ? null
            : $"{link.Name} is taken by the role '{first.Role}' ({first.Adapter}); '{role}' ({name}) wants one of its own";
    }
}
