using EolSequencer.Devices.Diagnostics;
using EolSequencer.Devices.Transport;
using EolSequencer.Model.Vehicles;
using EolSequencer.Wire.Obd;

namespace EolSequencer.Devices.VehicleBus;

/// <summary>The control units fitted to this vehicle, each with its client once it has been asked.</summary>
internal sealed class UnitDirectory : IDisposable
{
    private readonly Dictionary<string, DiagnosticClient> _clients = new(StringComparer.Ordinal);
    private readonly TransportLink _link;
    private readonly DiagnosticTiming _timing;
    private readonly Action<string>? _note;
    private GroupClient? _emissions;

    /// <exception cref="ArgumentException">Two units answer on the same identifier, so that each would take the other's answers.</exception>
    public UnitDirectory(IReadOnlyList<ControlUnit> fitted, TransportLink link, DiagnosticTiming timing, Action<string>? note)
    {
        (Fitted, _link, _timing, _note) = (fitted, link, timing, note);
        foreach (var group in fitted.GroupBy(unit => unit.Response).Where(group => group.Count() > 1))
        {
            throw new ArgumentException($"{string.Join(" and ", group.Select(unit => $"'{unit.Name}'"))} answer on the same identifier {BusAddresses.IdOf(group.Key)}", nameof(fitted));
        }
    }

    /// <summary>In the order of the vehicle type.</summary>
    public IReadOnlyList<ControlUnit> Fitted { get; }

    /// <summary>The client of a unit; a unit that is not fitted is a broken assumption of the checker.</summary>
    public DiagnosticClient Of(string unit)
    {
        if (_clients.TryGetValue(unit, out var client)) return client;
        var found = Fitted.FirstOrDefault(one => one.Name == unit)
            ?? throw new InvalidOperationException($"control unit '{unit}' is not fitted to this vehicle");
        return _clients[unit] = new DiagnosticClient(unit, _link, BusAddresses.Of(found), _timing, _note);
    }

    /// <summary>All units that speak of emissions, asked at once.</summary>
    public GroupClient Emissions
    {
        get
        {
            if (_emissions is not null) return _emissions;
            var units = Fitted.Where(BusAddresses.IsEmissionsUnit).ToList();
            var address = BusAddresses.ToAll(units).FirstOrDefault(ObdAddresses.All);
            return _emissions = new GroupClient("emissions units", _link, address, [.. units.Select(unit => Of(unit.Name))], _timing);
        }
    }

    /// <summary>Channels that reach all units at once, for what is not answered.</summary>
    public IReadOnlyList<TransportChannel> ToAll() =>
        [.. BusAddresses.ToAll(Fitted).Select(address => new TransportChannel(_link, address, listener: null))];

    /// <summary>The units a channel or action means: the one named, the one its index names, or all.</summary>
    public IEnumerable<string> Meant(string? unit, string? index) =>
        (unit ?? index) is { } one ? [one] : Fitted.Select(each => each.Name);

    /// <summary>All units but one, those heard last in front.</summary>
    public IEnumerable<DiagnosticClient> Others(string? than) =>
        Fitted.Where(unit => unit.Name != than).Select(unit => Of(unit.Name)).OrderByDescending(client => client.LastHeard ?? long.MinValue);

    public void Dispose()
    {
        _emissions?.Dispose();
        foreach (var client in _clients.Values) client.Dispose();
    }
}
