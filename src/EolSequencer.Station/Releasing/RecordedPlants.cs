using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Events;
using EolSequencer.Model.Plants;
using EolSequencer.Records;
using EolSequencer.Records.Reading;

namespace EolSequencer.Station.Releasing;

/// <summary>The plants of vehicles by the texts that their newest runs that count had; one is loaded once for all runs with the same texts.</summary>
/// <remarks>For one thread. Trouble with the record is a <see cref="RecordFault"/>.</remarks>
public sealed class RecordedPlants(RecordFolder record, ExpressionCache cache)
{
    private readonly Dictionary<string, Plant?> _plants = new(StringComparer.Ordinal);

    /// <summary>The first event of a vehicle's newest run that counts; null: it has none.</summary>
    public RunBegun? NewestOf(string vin) => record.Runs.List(new RunFilter { Vin = vin, Most = 1 }) is [var newest] ? (RunBegun)record.Runs.Load(newest.Run)!.Events[0] : null;

    /// <summary>The plant of a vehicle; null when it has no run that counts, or when this version of the program does not accept its texts.</summary>
    public Plant? Of(string vin) => NewestOf(vin) is { } newest ? Of(newest) : null;

    /// <summary>The plant of a run, by its first event; texts that were not read with it are taken from the record.</summary>
    public Plant? Of(RunBegun run)
    {
        var texts = string.Join(' ', run.Sources.Select(source => source.Hash).Prepend(run.Sequence));
        if (_plants.TryGetValue(texts, out var known)) return known;
        var whole = run.Sources.Any(source => source.Text.Length == 0) ? (RunBegun)record.Runs.Load(run.Run)!.Events[0] : run;
        return _plants[texts] = SequenceLoader.LoadRecorded(whole.Sources, whole.Sequence, cache).Plant;
    }
}
