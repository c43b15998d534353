using EolSequencer.Devices.Adapters;
using EolSequencer.Devices.Diagnostics;
using EolSequencer.Devices.VehicleBus;
using EolSequencer.Simulators;
using EolSequencer.Simulators.ControlUnits;

namespace EolSequencer.Rehearsal.Simulated;

/// <summary>
/// <c>simulated-vehicle</c>: the real vehicle bus device, plugged into the simulated bus. Settings <c>p2</c> and
/// <c>p2-star</c> fix how long units are waited for, whatever they state.
/// </summary>
internal sealed class BusAdapter(SimulatedVehicle vehicle) : IDeviceAdapter
{
    private static readonly TimeSpan Least = TimeSpan.FromMilliseconds(1);
    private static readonly TimeSpan Most = TimeSpan.FromSeconds(60);

    public string Name => "simulated-vehicle";

    public ValueTask<AdapterOpening> OpenAsync(AdapterRequest request, CancellationToken cancel)
    {
        var settings = request.Binding.Adapter.Settings;
        var odd = settings.Entries.FirstOrDefault(entry => entry.Name is not ("p2" or "p2-star"));
        if (odd is not null) return new(AdapterOpening.Refused($"{odd.NamePlace}: '{Name}' has no setting '{odd.Name}'; it knows p2 and p2-star"));
        var p2 = settings.Time("p2", Least, Most, out var fault);
        var p2Star = settings.Time("p2-star", Least, Most, out var starFault);
        if ((fault ?? starFault) is { } wrong) return new(AdapterOpening.Refused(wrong));

        var usual = new DiagnosticTiming();
        var timing = usual with { P2 = p2 ?? usual.P2, P2Star = p2Star ?? usual.P2Star, TakesStatedTimes = p2 is null && p2Star is null };
        return new(AdapterOpening.Open(new VehicleBusDevice(
            request.Binding.Role, vehicle.Port, request.Time, request.Fitted, new Keys(), timing, note: request.Note)));
    }

    private sealed class Keys : IKeyAlgorithm
    {
        public byte[] KeyOf(string unit, byte level, ReadOnlySpan<byte> seed) => SeedKey.KeyOf(level, seed);
    }
}
