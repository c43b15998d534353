using System.Collections.Immutable;
using EolSequencer.Cli.Operators;
using EolSequencer.Model.Ports;
using EolSequencer.Rehearsal.Operators;
using EolSequencer.Rehearsal.Simulated;
using EolSequencer.Station.Running;
using EolSequencer.Station.Time;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary>A run in real time, with a simulated vehicle where the station's file asks for one.</summary>
internal sealed class RealRun(IAnsiConsole console, RunChoices choices, StopSignals stopping)
{
    public VehicleRunEnd Run(OneRun run) => Within(run, VehicleRun.RunAsync);

    /// <summary>Leaves the vehicle of a run that broke off safe.</summary>
    public ImmutableArray<string> LeaveSafe(OneRun run) => Within(run, VehicleRun.LeaveSafeAsync);

    private T Within<T>(OneRun run, Func<VehicleRunRequest, CancellationToken, Task<T>> work)
    {
        var (station, plant, sequence, order) = run.Vehicle;
        var loop = new StationLoop(TimeProvider.System);
        return loop.Run(async () =>
        {
            var isSimulated = SimulatedStation.Serves(station);
            using var simulated = isSimulated ? new SimulatedStation(order, loop.Time, run.Seed, run.Faults) : null;
            using var stop = new CancellationTokenSource();
            using var asked = stopping.Token.Register(() => loop.Post(stop.Cancel));
            return await work(
                new VehicleRunRequest
                {
                    Run = run.Run,
                    Sequence = sequence,
                    Plant = plant,
                    Station = station,
                    Order = order,
                    Adapters = simulated?.Adapters ?? choices.Adapters,
                    Operator = OperatorOf(loop, run, simulated?.Operator),
                    Journal = run.Journal,
                    Time = loop.Time,
                    Mode = SimulatedStation.ModeOf(station, sequence),
                    Runs = run.Runs,
                    Seed = isSimulated ? run.Seed : null,
                    Injected = [.. run.Faults.Select(fault => fault.ToString())],
                    Only = run.Only,
                    RetestOf = run.RetestOf,
                    Past = run.Past,
                    Serials = isSimulated ? IPartSerials.None : run.Serials,
                    Note = run.Note,
                },
                stop.Token);
        });
    }

    private IOperator OperatorOf(StationLoop loop, OneRun run, IOperator? hands)
    {
        if (choices.Operator[0] == OperatorChoice.Terminal) return new TerminalOperator(console, loop, Console.In, run.Vehicle.Plant, choices.Language, hands);
        return run.Script is null ? hands! : new ScriptedOperator(run.Script, hands!, loop.Time);
    }
}
