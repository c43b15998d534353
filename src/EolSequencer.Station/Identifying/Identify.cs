using EolSequencer.Language.Binding.Orders;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Vehicles;
using EolSequencer.Station.Ordering;

namespace EolSequencer.Station.Identifying;

/// <summary>
/// Identity comes first: from the vehicle's number to its order, from its type and the station's kind to the sequence in
/// force. Only what has been found and fits together is run.
/// </summary>
public static class Identify
{
    /// <summary>Finds all that a run of this vehicle needs. Trouble is a diagnostic, never an exception; one call finds all it can.</summary>
    public static Identified Vehicle(IdentifyRequest request)
    {
        var station = StationLoader.Load(request.StationFile);
        var (sequence, order, found) = request.SequenceFile is { } file ? Named(file, station.Station, request) : InForce(station.Station, request);
        var diagnostics = new List<Diagnostic>([.. station.Diagnostics, .. sequence.Diagnostics, .. order.Diagnostics, .. found]);
        if (sequence.Sequence is { } tested)
        {
            if (order.Order is { } ordered) diagnostics.AddRange(OrderLoader.CheckType(ordered, tested));
            if (station.Station is { } at) diagnostics.AddRange(StationFit.Check(at, tested));
        }

        var isReady = diagnostics.TrueForAll(one => one.Severity != Severity.Error) && station.Station is not null && sequence is { Sequence: not null, Plant: not null } && order.Order is not null;
        return new Identified(
            isReady ? new IdentifiedVehicle(station.Station!, sequence.Plant!, sequence.Sequence!, order.Order!) : null,
            [.. diagnostics.Distinct()]);
    }

    private static (LoadResult Sequence, OrderResult Order, IReadOnlyList<Diagnostic> Found) Named(string file, StationFile? station, IdentifyRequest request)
    {
        var sequence = SequenceLoader.Load(file, request.Cache);
        return (sequence, Order(file, station, sequence.Sequence?.VehicleType, request), []);
    }

    private static (LoadResult Sequence, OrderResult Order, IReadOnlyList<Diagnostic> Found) InForce(StationFile? station, IdentifyRequest request)
    {
        var order = Order(request.StationFile, station, null, request);
        if (station is null || order.Order is null) return (new LoadResult(null, null, [], 0), order, []);
        var (path, found) = SequenceFinder.InForce(request.StationFile, order.Order.VehicleType, station.StationKind);
        return (path is null ? new LoadResult(null, null, [], 0) : SequenceLoader.Load(path, request.Cache), order, found);
    }

    private static OrderResult Order(string plant, StationFile? station, VehicleType? known, IdentifyRequest request) => request switch
    {
        { OrderFile: { } file } => OrderLoader.Load(file, request.Cache, known),
        { Vin: { } vin } => Order(plant, station, vin, known, request),
        _ => new OrderResult(null, []),
    };

    // What the plant has comes first; asked is only for what it does not have at all.
    private static OrderResult Order(string plant, StationFile? station, string vin, VehicleType? known, IdentifyRequest request)
    {
        var own = OrderLoader.LoadFor(plant, vin, request.Cache, known);
        return station?.OrdersFrom is { } address && own.Diagnostics.Any(one => one.Code == OrderCodes.NoOrder)
            ? OrderAsking.Ask(address, plant, vin, request.Cache, known)
            : own;
    }
}
