using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Station.Identifying;

namespace EolSequencer.Station.Explaining;

/// <summary>Finds a sequence and a vehicle, with or without a station.</summary>
public static class SubjectFinder
{
    /// <summary>Trouble is a diagnostic, never an exception.</summary>
    /// <param name="sequenceFile">Null: the sequence in force at the station, which must then be named.</param>
    /// <param name="stationFile">Null: no station is looked at.</param>
    /// <param name="orderFile">The vehicle's order; either this or <paramref name="vin"/>.</param>
    public static (Subject? Subject, IReadOnlyList<Diagnostic> Diagnostics) Find(
        string? sequenceFile, string? stationFile, string? orderFile, string? vin, ExpressionCache cache)
    {
        if (stationFile is null) return AtNoStation(sequenceFile!, orderFile, vin, cache);
        var found = Identify.Vehicle(new IdentifyRequest { StationFile = stationFile, SequenceFile = sequenceFile, OrderFile = orderFile, Vin = vin, Cache = cache });
        return (found.Vehicle is { } vehicle ? new Subject(vehicle.Plant, vehicle.Sequence, vehicle.Order, vehicle.Station) : null, found.Diagnostics);
    }

    private static (Subject? Subject, IReadOnlyList<Diagnostic> Diagnostics) AtNoStation(string sequenceFile, string? orderFile, string? vin, ExpressionCache cache)
    {
        var sequence = SequenceLoader.Load(sequenceFile, cache);
        var known = sequence.Sequence?.VehicleType;
        var order = orderFile is not null ? OrderLoader.Load(orderFile, cache, known) : OrderLoader.LoadFor(sequenceFile, vin!, cache, known);
        List<Diagnostic> diagnostics = [.. sequence.Diagnostics, .. order.Diagnostics];
        if (sequence.Sequence is { } tested && order.Order is { } ordered) diagnostics.AddRange(OrderLoader.CheckType(ordered, tested));
        var isReady = diagnostics.TrueForAll(one => one.Severity != Severity.Error) && sequence is { Sequence: not null, Plant: not null } && order.Order is not null;
        return (isReady ? new Subject(sequence.Plant!, sequence.Sequence!, order.Order!, null) : null, [.. diagnostics.Distinct()]);
    }
}
