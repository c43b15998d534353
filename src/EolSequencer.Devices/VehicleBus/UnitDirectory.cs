using EolSequencer.Devices.Diagnostics;
using EolSequencer.Model.Vehicles;
using EolSequencer.Wire.Can;
using EolSequencer.Wire.IsoTp;

namespace EolSequencer.Devices.VehicleBus;

/// <summary>The control units fitted to this vehicle, each with its client once it has been asked.</summary>
internal sealed class UnitDirectory(
    IReadOnlyList<ControlUnit> fitted, ICanPort port, TimeProvider time, DiagnosticTiming timing) : IDisposable
{
    private readonly Dictionary<string, DiagnosticClient> _clients = new(StringComparer.Ordinal);

    /// <summary>In the order of the vehicle type.</summary>
    public IReadOnlyList<ControlUnit> Fitted => fitted;

    /// <summary>The client of a unit; a unit that is not fitted is a broken assumption of the checker.</summary>
    public DiagnosticClient Of(string unit)
    {
        if (_clients.TryGetValue(unit, out var client)) return client;
        var found = fitted.FirstOrDefault(one => one.Name == unit)
            ?? throw new InvalidOperationException($"control unit '{unit}' is not fitted to this vehicle");
        var address = TransportAddress.Normal(IdOf(found.Request), IdOf(found.Response));
        return _clients[unit] = new DiagnosticClient(unit, port, time, address, timing);
    }

    /// <summary>The units an action or channel means: the one named, the one its index names, or all.</summary>
    public IEnumerable<string> Meant(string? unit, string? index) =>
        (unit ?? index) is { } one ? [one] : fitted.Select(each => each.Name);

    /// <summary>Whether any unit but one was heard after a moment.</summary>
    public bool AnyHeard(long since, string? except) =>
        _clients.Values.Any(client => client.Unit != except && client.Heard > since);

    public void Dispose()
    {
        foreach (var client in _clients.Values) client.Dispose();
    }

    /// <summary>Identifiers above 11 bits are extended ones.</summary>
    public static CanId IdOf(uint id) => id <= CanId.BaseMax ? CanId.Base(id) : CanId.Extended(id);
}
