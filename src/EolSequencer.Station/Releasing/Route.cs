using System.Collections.Immutable;
using EolSequencer.Engine.Planning;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Events;
using EolSequencer.Model.Plants;
using EolSequencer.Records;
using EolSequencer.Records.Reading;

namespace EolSequencer.Station.Releasing;

/// <summary>The station kinds that vehicles must pass, by their orders and the plant's text as their newest runs that count had them.</summary>
/// <remarks>For one thread. Plants are loaded once for all runs that had the same texts.</remarks>
public sealed class Route(RecordFolder record, ExpressionCache cache)
{
    private readonly Dictionary<string, Plant?> _plants = new(StringComparer.Ordinal);

    /// <summary>The route of a vehicle.</summary>
    /// <returns>Empty when it has no run that counts, when its plant names no route, or when this version of the program does not accept its texts.</returns>
    /// <exception cref="RecordFault">The record cannot be read.</exception>
    public ImmutableArray<string> Of(string vin) => record.Runs.List(new RunFilter { Vin = vin, Most = 1 }) is [var newest] ? Of((RunBegun)record.Runs.Load(newest.Run)!.Events[0]) : [];

    /// <summary>The route of a vehicle by the first event of its newest run; the texts of its files are taken from the record.</summary>
    /// <exception cref="RecordFault">The record cannot be read.</exception>
    public ImmutableArray<string> Of(RunBegun newest) => PlantOf(newest) is { } plant
        ? [.. plant.Route.Where(stop => stop.When is null || OrderScope.IsTrue(stop.When, newest.Order)).Select(stop => stop.StationKind)]
        : [];

    private Plant? PlantOf(RunBegun run)
    {
        var texts = string.Join(' ', run.Sources.Select(source => source.Hash).Prepend(run.Sequence));
        if (_plants.TryGetValue(texts, out var known)) return known;
        var whole = (RunBegun)record.Runs.Load(run.Run)!.Events[0];
        return _plants[texts] = SequenceLoader.LoadRecorded(whole.Sources, whole.Sequence, cache).Plant;
    }
}
