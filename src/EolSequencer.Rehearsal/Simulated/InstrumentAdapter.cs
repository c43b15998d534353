using EolSequencer.Devices.Adapters;
using EolSequencer.Model.Ports;

namespace EolSequencer.Rehearsal.Simulated;

/// <summary>A simulated instrument; a setting <c>wired-to</c> names the bus of the vehicle it is clamped to, of which there is one.</summary>
internal sealed class InstrumentAdapter(string name, Func<string, string?, TimeProvider, IDevice> create) : IDeviceAdapter
{
    public string Name => name;

    public ValueTask<AdapterOpening> OpenAsync(AdapterRequest request, CancellationToken cancel)
    {
        var odd = request.Binding.Adapter.Settings.Entries.FirstOrDefault(entry => entry.Name != "wired-to");
        return new(odd is null
            ? AdapterOpening.Open(create(request.Binding.Role, request.Binding.Instrument?.Id, request.Time))
            : AdapterOpening.Refused($"{odd.NamePlace}: '{name}' has no setting '{odd.Name}'; it knows wired-to"));
    }
}
