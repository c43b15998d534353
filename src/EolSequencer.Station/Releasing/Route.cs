using System.Collections.Immutable;
using EolSequencer.Engine.Planning;
using EolSequencer.Language.Expressions;
using EolSequencer.Model.Events;
using EolSequencer.Records;

namespace EolSequencer.Station.Releasing;

/// <summary>The station kinds that vehicles must pass, by their orders and the plant's text as their newest runs that count had them.</summary>
/// <remarks>For one thread.</remarks>
public sealed class Route(RecordFolder record, ExpressionCache cache)
{
    private readonly RecordedPlants _plants = new(record, cache);

    /// <summary>The route of a vehicle.</summary>
    /// <returns>Empty when it has no run that counts, when its plant names no route, or when this version of the program does not accept its texts.</returns>
    /// <exception cref="RecordFault">The record cannot be read.</exception>
    public ImmutableArray<string> Of(string vin) => _plants.NewestOf(vin) is { } newest ? Of(newest) : [];

    /// <summary>The route of a vehicle by the first event of its newest run; the texts of its files are taken from the record.</summary>
    /// <exception cref="RecordFault">The record cannot be read.</exception>
    public ImmutableArray<string> Of(RunBegun newest) => _plants.Of(newest) is { } plant
        ? [.. plant.Route.Where(stop => stop.When is null || OrderScope.IsTrue(stop.When, newest.Order)).Select(stop => stop.StationKind)]
        : [];
}
