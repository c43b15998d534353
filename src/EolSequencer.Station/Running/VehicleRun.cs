using System.Collections.Immutable;
using System.Reflection;
using EolSequencer.Devices.Adapters;
using EolSequencer.Engine.Planning;
using EolSequencer.Engine.Running;
using EolSequencer.Model.Events;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Vehicles;
using EolSequencer.Records.Reading;
using EolSequencer.Station.Fitness;

namespace EolSequencer.Station.Running;

/// <summary>The one way to run a vehicle: for the command line, the pages and rehearsals.</summary>
public static class VehicleRun
{
    /// <summary>Version of this program as it stands in the record.</summary>
    public static string Program { get; } =
        typeof(VehicleRun).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "0";

    /// <summary>Opens the devices, runs the sequence to its end and closes the devices, on the caller's thread. A run that broke off goes on.</summary>
    /// <param name="stop">Ends the steps; <c>always</c> still runs. Cancel it on the run's thread.</param>
    public static async Task<VehicleRunEnd> RunAsync(VehicleRunRequest request, CancellationToken stop)
    {
        // A vehicle that waits to be left safe is left safe whatever the day.
        var fitness = request.Mode == RunMode.Production && request.Past.IsEmpty
            ? StationFitness.For(request.Station, request.Sequence, request.Plant, request.Runs, request.Time.GetUtcNow())
            : StationFitness.Unasked;
        if (!fitness.Refused.IsEmpty) return new VehicleRunEnd(null, fitness.Refused);
        foreach (var line in fitness.Calibrations.Concat(fitness.Flagged)) request.Note(line);
        var (devices, faults) = await OpenAsync(request, stop);
        await using (devices)
        {
            if (!faults.IsEmpty) return new VehicleRunEnd(null, faults);
            return new VehicleRunEnd(await SequenceRunner.RunAsync(RequestFor(request, devices, fitness), stop), []);
        }
    }

    /// <summary>Opens the devices, leaves the vehicle of a run that broke off safe, and closes them. The run is neither gone on with nor ended.</summary>
    /// <returns>What kept it from being done, or the record from being kept; empty when all is well.</returns>
    public static async Task<ImmutableArray<string>> LeaveSafeAsync(VehicleRunRequest request, CancellationToken stop)
    {
        var (devices, faults) = await OpenAsync(request, stop);
        await using (devices)
        {
            if (!faults.IsEmpty) return faults;
            return await SequenceRunner.LeaveSafeAsync(RequestFor(request, devices, StationFitness.Unasked)) is { } lost ? [lost] : [];
        }
    }

    private static ValueTask<(OpenDevices Devices, ImmutableArray<string> Faults)> OpenAsync(VehicleRunRequest request, CancellationToken stop) =>
        OpenDevices.OpenAsync(request.Station, request.Sequence, request.Order, request.Adapters, request.Time, request.Note, stop);

    private static RunRequest RequestFor(VehicleRunRequest request, OpenDevices devices, StationFitness fitness) => new()
    {
        Sequence = request.Sequence,
        Plan = Planner.For(request.Sequence, request.Order, request.Only),
        Order = request.Order,
        Devices = devices.ByRole,
        Operator = request.Operator,
        Journal = request.Journal,
        Time = request.Time,
        Live = request.Live,
        Serials = request.Serials,
        Past = request.Past,
        Person = request.Person,
        Begin = (n, at) => FirstEvent(request, devices, fitness, n, at),
    };

    private static RunBegun FirstEvent(VehicleRunRequest request, OpenDevices devices, StationFitness fitness, int n, long at) => new()
    {
        N = n,
        At = at,
        Run = request.Run,
        Plant = request.Plant.Id,
        Station = request.Station.Id,
        StationKind = request.Station.StationKind,
        Sequence = request.Sequence.Id,
        Revision = request.Sequence.Revision,
        Order = request.Order,
        Sources = request.Sequence.Sources,
        Compiled = request.Sequence.CompiledHash,
        Program = Program,
        Person = request.Person,
        Mode = request.Mode,
        Seed = request.Seed,
        Injected = request.Injected,
        Zone = request.Plant.Zone,
        Wall = request.Time.GetUtcNow(),
        Instruments = devices.Instruments,
        Unfit = fitness.Flagged,
        OnlySteps = request.Only,
        RetestOf = request.RetestOf,
        Planned = 0,
    };
}

/// <summary>All that running one vehicle needs.</summary>
public sealed record VehicleRunRequest
{
    /// <summary>Id of the run, given by the record.</summary>
    public required string Run { get; init; }
    public required CheckedSequence Sequence { get; init; }
    public required Plant Plant { get; init; }
    public required StationFile Station { get; init; }
    public required Order Order { get; init; }
    public required AdapterRegistry Adapters { get; init; }
    public required IOperator Operator { get; init; }
    public required IRunJournal Journal { get; init; }
    public required TimeProvider Time { get; init; }
    public required RunMode Mode { get; init; }

    /// <summary>The runs in the record, among them the station's checks; wanted by production runs at a station that is checked.</summary>
    public RunReader? Runs { get; init; }
    public ILiveValues Live { get; init; } = ILiveValues.Nowhere;

    /// <summary>Knows the parts of other vehicles; for a run that counts, those of the record.</summary>
    public IPartSerials Serials { get; init; } = IPartSerials.None;

    /// <summary>Told what devices find that whoever looks after the station should know.</summary>
    public Action<string> Note { get; init; } = _ => { };
    public string? Person { get; init; }
    public ulong? Seed { get; init; }
    public ImmutableArray<string> Injected { get; init; } = [];

    /// <summary>The events of a run that broke off and is taken up; empty: it begins.</summary>
    public ImmutableArray<RunEvent> Past { get; init; } = [];

    /// <summary>Ids or patterns of the steps wanted; empty: all.</summary>
    public ImmutableArray<string> Only { get; init; } = [];

    /// <summary>The whole run that it repeats in part; null: none.</summary>
    public string? RetestOf { get; init; }
}

/// <summary>What came of it.</summary>
/// <param name="Result">Null when the run did not begin.</param>
/// <param name="Faults">Why it did not begin; empty when it did.</param>
public sealed record VehicleRunEnd(RunResult? Result, ImmutableArray<string> Faults);
