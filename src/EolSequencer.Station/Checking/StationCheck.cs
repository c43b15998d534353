using System.Collections.Immutable;
using EolSequencer.Devices.Adapters;
using EolSequencer.Engine.Planning;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Vehicles;
using EolSequencer.Station.Running;

namespace EolSequencer.Station.Checking;

/// <summary>
/// Whether a station could run a vehicle: each device is opened, asked what it is, and one channel of it is read. Nothing is
/// moved, set or recorded, and every device is closed again.
/// </summary>
public static class StationCheck
{
    /// <summary>Looks at every role of a sequence, in its order, whatever the others came to.</summary>
    public static async Task<ImmutableArray<CheckedRole>> RunAsync(
        StationFile station, CheckedSequence sequence, Order order, AdapterRegistry adapters, TimeProvider time, Action<string> note, CancellationToken cancel)
    {
        var opening = new DeviceOpening(station, order, Fitting.Of(sequence.VehicleType, order), adapters, time, note);
        var open = new List<IDevice>();
        var found = ImmutableArray.CreateBuilder<CheckedRole>();
        try
        {
            // All stay open until the last is done, as in a run: what two of them want is found.
            foreach (var role in sequence.Roles)
            {
                var (device, fault) = await opening.OpenAsync(role, cancel);
                if (device is not null) open.Add(device);
                var row = new CheckedRole(role.Role, role.Kind.Id, station.Find(role.Role)?.Adapter.Adapter, fault) { IsOpen = device is not null };
                found.Add(device is null ? row : await AskAsync(row, device, role.Kind, order, time, cancel));
            }
        }
        finally
        {
            foreach (var device in open) await device.DisposeAsync();
        }

        return found.ToImmutable();
    }

    private static async ValueTask<CheckedRole> AskAsync(CheckedRole row, IDevice device, DeviceKind kind, Order order, TimeProvider time, CancellationToken cancel)
    {
        var who = await device.IdentifyAsync(cancel);
        row = row with { Identity = who.Value?.ToString(), Fault = Trouble("identifying", who) };
        if (Readable(kind, order) is not var (channel, index)) return row;
        var begun = time.GetTimestamp();
        var reading = await device.ReadAsync(new ReadRequest(channel, index, begun), cancel);
        return row with
        {
            Channel = index is null ? channel.Name : $"{channel.Name}[{index}]",
            Value = reading.Value?.ToString(),
            Took = time.GetElapsedTime(begun),
            Fault = row.Fault ?? Trouble($"reading {channel.Name}", reading),
        };
    }

    private static string? Trouble(string what, in Reading reading) =>
        reading.Missing is { } cause ? $"{what}: {cause.Word()}{(reading.Detail is { } detail ? $", {detail}" : "")}" : null;

    /// <summary>A channel that this vehicle has and that gives a value at any time: rather one that is asked for and has no index.</summary>
    private static (ChannelDescription Channel, string? Index)? Readable(DeviceKind kind, Order order)
    {
        bool Has(Model.Expressions.Expression? when) => when is null || OrderScope.IsTrue(when, order);
        foreach (var channel in kind.Channels.Values.Where(one => !one.IsEvent && Has(one.When)).OrderBy(Rank))
        {
            if (channel.Indexes.IsEmpty) return (channel, null);
            if (channel.Indexes.FirstOrDefault(index => Has(index.When)) is { } first) return (channel, first.Value);
        }

        return null;
    }

    private static int Rank(ChannelDescription channel) => (channel.Source is null or ChannelSource.Data ? 0 : 2) + (channel.Indexes.IsEmpty ? 0 : 1);
}
