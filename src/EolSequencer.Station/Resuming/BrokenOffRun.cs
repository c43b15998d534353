using System.Collections.Immutable;
using EolSequencer.Engine.Planning;
using EolSequencer.Engine.Running;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Events;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Vehicles;
using EolSequencer.Records;
using EolSequencer.Records.Reading;
using EolSequencer.Station.Identifying;

namespace EolSequencer.Station.Resuming;

/// <summary>A run of a station that began and has not ended, although no process has the station: it broke off.</summary>
/// <param name="Vehicle">The vehicle it was on, with the sequence as the run had it.</param>
/// <param name="Events">All that is in the record.</param>
public sealed record BrokenOffRun(IdentifiedVehicle Vehicle, ImmutableArray<RunEvent> Events)
{
    public RunBegun Begun => (RunBegun)Events[0];

    /// <summary>Id of the run.</summary>
    public string Run => Begun.Run;

    /// <summary>Wall time of its last event.</summary>
    public DateTimeOffset BrokeOff => Begun.Wall + TimeSpan.FromMicroseconds(Events[^1].At);

    /// <summary>The runs of a station that broke off, newest first. For whoever has taken the station.</summary>
    public static ImmutableArray<RunSummary> Of(DataFolder folder, string station) =>
        folder.Record.Runs.List(new RunFilter { Mode = null, Station = station, OnlyUnfinished = true });

    /// <summary>Loads what the run had from the record; null, with the reasons, when this version of the program does not accept it.</summary>
    /// <param name="station">The station as it is now.</param>
    public static (BrokenOffRun? Run, IReadOnlyList<Diagnostic> Diagnostics) Load(RunRecord record, StationFile station, ExpressionCache cache)
    {
        var begun = (RunBegun)record.Events[0];
        var loaded = SequenceLoader.LoadRecorded(begun.Sources, begun.Sequence, cache);
        return loaded is { Sequence: { } sequence, Plant: { } plant }
            ? (new BrokenOffRun(new IdentifiedVehicle(station, plant, sequence, begun.Order), record.Events), loaded.Diagnostics)
            : (null, loaded.Diagnostics);
    }

    /// <summary>Why the run does not go on with a vehicle; null when it does.</summary>
    /// <param name="order">The vehicle that has been identified.</param>
    /// <param name="plant">The plant as it is now.</param>
    /// <param name="mode">What a run at the station counts for now.</param>
    public string? WhyNot(Order order, Plant plant, RunMode mode, DateTimeOffset now) =>
        order.Vin != Begun.Order.Vin ? $"another vehicle has been identified ({order.Vin})"
        : mode != Begun.Mode ? "runs at the station count for something else now"
        : now - BrokeOff > plant.ResumeWithin ? $"it broke off longer ago than the plant's limit of {plant.ResumeWithin.TotalMinutes:0.#} min"
        : null;

    /// <summary>Ends it as interrupted; wants no device.</summary>
    /// <param name="journal">That of the run, behind its last event.</param>
    public RunResult End(IRunJournal journal, TimeProvider time, string? person) =>
        SequenceRunner.End(Planner.For(Vehicle.Sequence, Vehicle.Order, Begun.OnlySteps), Events, journal, time, person);
}
