using System.Collections.Immutable;
using EolSequencer.Model.Events;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Vehicles;
using EolSequencer.Simulators.Bus;
using EolSequencer.Simulators.Faults;
using EolSequencer.Simulators.Time;
using EolSequencer.Station.Running;

namespace EolSequencer.Rehearsal.Simulated;

/// <summary>One rehearsal in virtual time: the same request gives the same events, byte for byte.</summary>
public static class VirtualRun
{
    /// <summary>Runs to the end on the caller's thread.</summary>
    /// <param name="stop">Ends the steps when cancelled; asked for at each event, so that it may come from any thread.</param>
    public static VirtualRunEnd Run(VirtualRunRequest request, CancellationToken stop = default)
    {
        var (end, frames, took) = Within(request, stop, VehicleRun.RunAsync);
        return new VirtualRunEnd(end, frames, took);
    }

    /// <summary>Leaves the vehicle of a run that broke off safe, see <see cref="VehicleRun.LeaveSafeAsync"/>.</summary>
    public static ImmutableArray<string> LeaveSafe(VirtualRunRequest request, CancellationToken stop = default) => Within(request, stop, VehicleRun.LeaveSafeAsync).End;

    private static (T End, long Frames, TimeSpan Took) Within<T>(
        VirtualRunRequest request, CancellationToken stop, Func<VehicleRunRequest, CancellationToken, Task<T>> work)
    {
        var time = new VirtualTime(request.Start);
        using var station = new SimulatedStation(request.Order, time, request.Seed, request.Faults) { Observer = request.Observer };
        using var stopping = new CancellationTokenSource();
        var journal = new ShowingJournal(request.Journal, _ =>
        {
            // The token of the outside is looked at on the run's thread, so the run stays on it.
            if (stop.IsCancellationRequested) stopping.Cancel();
        });
        if (request.Longest is { } longest) time.At(longest, stopping.Cancel);
        var end = time.Run(() => work(
            new VehicleRunRequest
            {
                Run = request.Run,
                Sequence = request.Sequence,
                Plant = request.Plant,
                Station = request.Station,
                Order = request.Order,
                Adapters = station.Adapters,
                Operator = request.Operator?.Invoke(station.Operator, time) ?? station.Operator,
                Journal = journal,
                Time = time,
                Mode = RunMode.Rehearsal,
                Seed = request.Seed,
                Injected = [.. request.Faults.Select(fault => fault.ToString())],
                Only = request.Only,
                RetestOf = request.RetestOf,
                Past = request.Past,
                Serials = request.Serials,
                Note = request.Note,
            },
            stopping.Token));
        return (end, station.FramesCarried, time.Now);
    }
}

/// <summary>What is rehearsed.</summary>
public sealed record VirtualRunRequest
{
    /// <summary>Id of the run, given by the record.</summary>
    public required string Run { get; init; }
    public required CheckedSequence Sequence { get; init; }
    public required Plant Plant { get; init; }
    public required StationFile Station { get; init; }
    public required Order Order { get; init; }
    public required IRunJournal Journal { get; init; }

    /// <summary>Wall time at the start.</summary>
    public required DateTimeOffset Start { get; init; }

    /// <summary>Fixes all that is left to chance.</summary>
    public required ulong Seed { get; init; }

    /// <summary>What is wrong with the vehicle or its operator.</summary>
    public ImmutableArray<InjectedFault> Faults { get; init; } = [];

    /// <summary>The events of a run that broke off and is taken up; empty: it begins.</summary>
    public ImmutableArray<RunEvent> Past { get; init; } = [];

    /// <summary>Ids or patterns of the steps wanted; empty: all.</summary>
    public ImmutableArray<string> Only { get; init; } = [];

    /// <summary>The whole run that it repeats in part; null: none.</summary>
    public string? RetestOf { get; init; }

    /// <summary>Stands in for the simulated person, or around it; null: the simulated person.</summary>
    public Func<IOperator, TimeProvider, IOperator>? Operator { get; init; }

    /// <summary>The parts of other vehicles; none, unless some are made up.</summary>
    public IPartSerials Serials { get; init; } = IPartSerials.None;

    /// <summary>When the run is stopped as if somebody had, in virtual time; null: a run that waits for ever is a fault of the caller.</summary>
    public TimeSpan? Longest { get; init; }

    /// <summary>Told what devices find that whoever looks after the station should know.</summary>
    public Action<string> Note { get; init; } = _ => { };

    /// <summary>Sees every frame on the bus; null: nobody.</summary>
    public IBusObserver? Observer { get; init; }
}

/// <summary>What came of a rehearsal.</summary>
/// <param name="Frames">Frames the bus carried.</param>
/// <param name="Took">Virtual time.</param>
public sealed record VirtualRunEnd(VehicleRunEnd End, long Frames, TimeSpan Took);
