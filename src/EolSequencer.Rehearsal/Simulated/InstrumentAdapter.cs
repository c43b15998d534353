using EolSequencer.Devices.Adapters;
using EolSequencer.Model.Ports;

namespace EolSequencer.Rehearsal.Simulated;

/// <summary>A simulated instrument on the vehicle, of which there is one.</summary>
/// <param name="offer">What it can read and do.</param>
internal sealed class InstrumentAdapter(
    string name, string what, (IReadOnlyList<string> Channels, IReadOnlyList<string> Actions) offer, Func<string, string?, TimeProvider, IDevice> create) : IDeviceAdapter
{
    public AdapterDescription Description { get; } = new(
        name, what, new AdapterSetting("wired-to", new SettingForm.Text("the role of the vehicle's bus", "bus"), "whose wires it hangs on"));

    public DeviceOffer OfferOf(CheckedSettings settings) => new([.. offer.Channels.Select(channel => new OfferedChannel(channel))], [.. offer.Actions]);

    public ValueTask<AdapterOpening> OpenAsync(AdapterRequest request, CancellationToken cancel) =>
        new(AdapterOpening.Open(create(request.Binding.Role, request.Binding.Instrument?.Id, request.Time)));
}
