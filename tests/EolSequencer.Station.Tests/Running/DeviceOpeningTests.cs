using System.Collections.Immutable;
using EolSequencer.Devices.Adapters;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Source;
using EolSequencer.Model.Texts;
using EolSequencer.Station.Running;

namespace EolSequencer.Station.Tests.Running;

/// <summary>Two roles on one port would each take the other's answers, so the second is refused with both named.</summary>
public class DeviceOpeningTests
{
    private readonly ListeningAdapter _own = new("own", isShared: false);
    private readonly ListeningAdapter _shared = new("shared", isShared: true);

    [Fact]
    public async Task A_port_that_a_role_has_is_refused_to_a_second_with_both_named()
    {
        var faults = await OpenAsync(("meter", "own", "p1"), ("scale", "own", "p1"));
        Assert.Contains("never opened here", faults[0], StringComparison.Ordinal);
        Assert.Contains("scale: port p1 is taken by the role 'meter' (own); 'scale' (own) wants one of its own", faults[1], StringComparison.Ordinal);
        Assert.Equal(["meter"], _own.Asked);
    }

    [Fact]
    public async Task Other_ports_of_one_adapter_are_opened()
    {
        await OpenAsync(("meter", "own", "p1"), ("scale", "own", "p2"));
        Assert.Equal(["meter", "scale"], _own.Asked);
    }

    [Fact]
    public async Task What_may_be_shared_is_opened_for_every_role()
    {
        await OpenAsync(("bus", "shared", "p1"), ("spare", "shared", "p1"));
        Assert.Equal(["bus", "spare"], _shared.Asked);
    }

    [Fact]
    public async Task What_one_adapter_shares_is_not_shared_with_another()
    {
        var faults = await OpenAsync(("bus", "shared", "p1"), ("meter", "own", "p1"));
        Assert.Contains("taken by the role 'bus' (shared); 'meter' (own)", faults[1], StringComparison.Ordinal);
    }

    private async Task<IReadOnlyList<string>> OpenAsync(params (string Role, string Adapter, string Port)[] roles)
    {
        var here = SourcePlace.None;
        var station = new StationFile
        {
            Id = "bench",
            Title = LocalText.Plain("bench"),
            StationKind = "startup",
            Place = here,
            DataFolder = "/nowhere",
            Devices = [.. roles.Select(one => new RoleBinding(
                one.Role,
                new AdapterBinding(one.Adapter, here, new Setting.Map([new("port", here, new Setting.Scalar(one.Port, here))], here)),
                null))],
        };
        var kind = new DeviceKind("any", false, ImmutableSortedDictionary<string, ChannelDescription>.Empty, ImmutableSortedDictionary<string, ActionDescription>.Empty);
        var opening = new DeviceOpening(station, null!, [], new AdapterRegistry(_own, _shared), TimeProvider.System, _ => { });
        var faults = new List<string>();
        foreach (var (role, _, _) in roles) faults.Add((await opening.OpenAsync(new DeviceRole(role, kind), default)).Fault!);
        return faults;
    }

    private sealed class ListeningAdapter(string name, bool isShared) : IDeviceAdapter
    {
        public List<string> Asked { get; } = [];

        public AdapterDescription Description { get; } = new(name, "a test's own", new AdapterSetting("port", new SettingForm.Text("a port", "p1"), "where"));

        public LinkUse LinkOf(CheckedSettings settings) => new($"port {settings.Text("port")}", isShared);

        public ValueTask<AdapterOpening> OpenAsync(AdapterRequest request, CancellationToken cancel)
        {
            Asked.Add(request.Binding.Role);
            return new(AdapterOpening.Refused("never opened here"));
        }
    }
}
