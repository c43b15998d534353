using System.Collections.Immutable;
using EolSequencer.Devices.Adapters;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Events;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Station.Running;

/// <summary>The devices of a station, opened for one vehicle and closed together.</summary>
public sealed class OpenDevices : IAsyncDisposable
{
    private readonly Dictionary<string, IDevice> _devices = new(StringComparer.Ordinal);
    private readonly List<InstrumentInUse> _instruments = [];

    public IReadOnlyDictionary<string, IDevice> ByRole => _devices;

    public ImmutableArray<InstrumentInUse> Instruments => [.. _instruments];

    /// <summary>Opens the device of every role that the sequence names; the faults of all of them are found at once.</summary>
    public static async ValueTask<(OpenDevices Devices, ImmutableArray<string> Faults)> OpenAsync(
        StationFile station, CheckedSequence sequence, Order order, AdapterRegistry adapters, TimeProvider time, Action<string> note, CancellationToken cancel)
    {
        var opened = new OpenDevices();
        var faults = ImmutableArray.CreateBuilder<string>();
        var fitted = Fitting.Of(sequence.VehicleType, order);
        foreach (var role in sequence.Roles)
        {
            if (await opened.OpenAsync(station, role, order, fitted, adapters, time, note, cancel) is { } fault) faults.Add(fault);
        }

        return (opened, faults.ToImmutable());
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var device in _devices.Values) await device.DisposeAsync();
    }

    private async ValueTask<string?> OpenAsync(
        StationFile station, DeviceRole role, Order order, IReadOnlyList<ControlUnit> fitted, AdapterRegistry adapters, TimeProvider time, Action<string> note, CancellationToken cancel)
    {
        if (station.Find(role.Role) is not { } binding)
        {
            return $"station '{station.Id}' binds no adapter to the role '{role.Role}' ({role.Kind.Id}); add it under devices";
        }

        if (adapters.Find(binding.Adapter.Adapter) is not { } adapter)
        {
            return $"{binding.Adapter.Place}: there is no adapter '{binding.Adapter.Adapter}'; there are {string.Join(", ", adapters.Names)}";
        }

        var opening = await adapter.OpenAsync(new AdapterRequest(binding, role.Kind, order, fitted, time) { Note = said => note($"{role.Role}: {said}") }, cancel);
        if (opening.Device is null) return $"{binding.Adapter.Place}: {role.Role}: {opening.Fault}";
        _devices[role.Role] = opening.Device;
        if (binding.Instrument is { } instrument) _instruments.Add(new InstrumentInUse(role.Role, instrument.Id, instrument.CalibrationDue));
        return null;
    }
}
