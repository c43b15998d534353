using System.Collections.Immutable;
using EolSequencer.Devices.Adapters;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Source;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Devices.Tests.Kit;

/// <summary>Settings as a station file would hand them over, and devices opened with them.</summary>
internal static class SettingBench
{
    private static readonly SourcePlace Here = SourcePlace.None with { File = "station.yaml" };

    public static DeviceKind NoKind { get; } = new("test", false, ImmutableSortedDictionary<string, ChannelDescription>.Empty, ImmutableSortedDictionary<string, ActionDescription>.Empty);

    public static AdapterBinding Binding(IDeviceAdapter adapter, params (string Name, string Text)[] settings) => new(
        adapter.Description.Name,
        Here,
        new Setting.Map([.. settings.Select(one => new Setting.Entry(one.Name, Here, new Setting.Scalar(one.Text, Here)))], Here));

    public static CheckedSettings? Read(IDeviceAdapter adapter, out string? fault, params (string Name, string Text)[] settings) =>
        CheckedSettings.Read(adapter.Description, Binding(adapter, settings), out fault);

    public static ValueTask<AdapterOpening> OpenAsync(IDeviceAdapter adapter, TimeProvider time, params (string Name, string Text)[] settings) =>
        OpenAsync(adapter, time, [], _ => { }, settings);

    public static ValueTask<AdapterOpening> OpenAsync(
        IDeviceAdapter adapter, TimeProvider time, IReadOnlyList<ControlUnit> fitted, Action<string> note, params (string Name, string Text)[] settings)
    {
        var binding = Binding(adapter, settings);
        var read = CheckedSettings.Read(adapter.Description, binding, out var fault);
        Assert.Null(fault);
        return adapter.OpenAsync(new AdapterRequest(new RoleBinding("role", binding, null), read!, NoKind, null!, fitted, time) { Note = note }, default);
    }
}
