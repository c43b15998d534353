using EolSequencer.Devices.Adapters;

namespace EolSequencer.SamplePlugin;

/// <summary><c>sample-counter</c>: counts its reads from a number that the station file says.</summary>
internal sealed class CounterAdapter : IDeviceAdapter
{
    public AdapterDescription Description { get; } = new(
        "sample-counter",
        "a counter without hardware, to show how an adapter is written",
        new AdapterSetting("from", new SettingForm.Whole(0, 1000, "10"), "the first number") { Usual = "0" });

    public DeviceOffer OfferOf(CheckedSettings settings) => new([new OfferedChannel("count")], ["restart"]);

    public ValueTask<AdapterOpening> OpenAsync(AdapterRequest request, CancellationToken cancel) =>
        new(AdapterOpening.Open(new Counter(request.Binding.Role, request.Settings.Whole("from") ?? 0, request.Time)));
}
