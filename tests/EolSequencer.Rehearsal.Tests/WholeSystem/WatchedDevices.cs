using EolSequencer.Devices.Adapters;
using EolSequencer.Model.Ports;
using EolSequencer.Simulators.Time;

namespace EolSequencer.Rehearsal.Tests.WholeSystem;

/// <summary>Writes down what devices were told to do, whether or not it went well: what was tried is known without any record.</summary>
internal sealed class WatchedDevices(VirtualTime time)
{
    private readonly List<(TimeSpan At, string Action)> _tried = [];

    /// <summary>Role and action of what was tried, in order.</summary>
    public IReadOnlyList<(TimeSpan At, string Action)> Tried => _tried;

    /// <summary>The same adapters, watched.</summary>
    public AdapterRegistry Watch(AdapterRegistry adapters) => new([.. adapters.Names.Select(name => new Adapter(this, adapters.Find(name)!))]);

    private sealed class Adapter(WatchedDevices watch, IDeviceAdapter inner) : IDeviceAdapter
    {
        public AdapterDescription Description => inner.Description;

        public DeviceOffer? OfferOf(CheckedSettings settings) => inner.OfferOf(settings);

        public LinkUse? LinkOf(CheckedSettings settings) => inner.LinkOf(settings);

        public async ValueTask<AdapterOpening> OpenAsync(AdapterRequest request, CancellationToken cancel)
        {
            var opening = await inner.OpenAsync(request, cancel);
            return opening.Device is { } device ? AdapterOpening.Open(new Device(watch, device)) : opening;
        }
    }

    private sealed class Device(WatchedDevices watch, IDevice inner) : IDevice
    {
        public string Role => inner.Role;

        public string? Instrument => inner.Instrument;

        public ValueTask<Reading> IdentifyAsync(CancellationToken cancel) => inner.IdentifyAsync(cancel);

        public ValueTask<Reading> ReadAsync(ReadRequest request, CancellationToken cancel) => inner.ReadAsync(request, cancel);

        public ValueTask<IReadOnlyList<Reading>> ReadEachAsync(ReadRequest request, IReadOnlyList<string> indexes, CancellationToken cancel) => inner.ReadEachAsync(request, indexes, cancel);

        public IDisposable Watch(ReadRequest request, TimeSpan every, IReadingListener listener) => inner.Watch(request, every, listener);

        public ValueTask<Reading> ActAsync(ActionRequest request, CancellationToken cancel)
        {
            var index = request.Index is { } one ? $"[{one}]" : "";
            var to = request.To is { } value ? $" = {value}" : "";
            watch._tried.Add((watch.Now, $"{Role}.{request.Action.Name}{index}{to}"));
            return inner.ActAsync(request, cancel);
        }

        public ValueTask<bool> OthersAnswerAsync(ReadRequest request, long since, CancellationToken cancel) => inner.OthersAnswerAsync(request, since, cancel);

        public ValueTask DisposeAsync() => inner.DisposeAsync();
    }

    private TimeSpan Now => time.Now;
}
