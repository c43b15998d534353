using System.Collections.Immutable;
using EolSequencer.Engine.Planning;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Events;
using EolSequencer.Records;
using EolSequencer.Records.Reading;

namespace EolSequencer.Station.Releasing;

/// <summary>The station kinds that one vehicle must pass.</summary>
public static class Route
{
    /// <summary>The plant's route for a vehicle, by its order and the plant's text as its newest run that counts had them.</summary>
    /// <returns>Empty when it has no such run, when its plant names no route, or when this version of the program does not accept its texts.</returns>
    /// <exception cref="RecordFault">The record cannot be read.</exception>
    public static ImmutableArray<string> Of(RecordFolder record, string vin, ExpressionCache cache)
    {
        if (record.Runs.List(new RunFilter { Vin = vin, Most = 1 }) is not [var newest]) return [];
        var begun = (RunBegun)record.Runs.Load(newest.Run)!.Events[0];
        return SequenceLoader.LoadRecorded(begun.Sources, begun.Sequence, cache).Plant is { } plant
            ? [.. plant.Route.Where(stop => stop.When is null || OrderScope.IsTrue(stop.When, begun.Order)).Select(stop => stop.StationKind)]
            : [];
    }
}
