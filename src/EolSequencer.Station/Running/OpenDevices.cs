using System.Collections.Immutable;
using EolSequencer.Devices.Adapters;
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
        var opening = new DeviceOpening(station, order, Fitting.Of(sequence.VehicleType, order), adapters, time, note);
        foreach (var role in sequence.Roles)
        {
            var (device, fault) = await opening.OpenAsync(role, cancel);
            if (fault is not null) faults.Add(fault);
            if (device is not null) opened.Add(device, station.Find(role.Role)!.Instrument);
        }

        return (opened, faults.ToImmutable());
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var device in _devices.Values) await device.DisposeAsync();
    }

    private void Add(IDevice device, Instrument? instrument)
    {
        _devices[device.Role] = device;
        if (instrument is not null) _instruments.Add(new InstrumentInUse(device.Role, instrument.Id, instrument.CalibrationDue));
    }
}
