using EolSequencer.Cli.Operators;
using EolSequencer.Devices.Adapters;
using EolSequencer.Model.Events;
using EolSequencer.Model.Plants;
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
    public VehicleRunEnd Run(ReadyRun ready, string run, IRunJournal journal, Action<string> note, ulong seed)
    {
        var (station, plant, sequence, order) = ready.Vehicle;
        var loop = new StationLoop(TimeProvider.System);
        return loop.Run(async () =>
        {
            var isSimulated = SimulatedStation.Serves(station);
            using var simulated = isSimulated ? new SimulatedStation(order, loop.Time, seed, ready.Faults) : null;
            using var stop = new CancellationTokenSource();
            using var asked = stopping.Token.Register(() => loop.Post(stop.Cancel));
            return await VehicleRun.RunAsync(
                new VehicleRunRequest
                {
                    Run = run,
                    Sequence = sequence,
                    Plant = plant,
                    Station = station,
                    Order = order,
                    Adapters = simulated?.Adapters ?? new AdapterRegistry(),
                    Operator = OperatorOf(loop, plant, simulated?.Operator, ready.Script),
                    Journal = journal,
                    Time = loop.Time,
                    Mode = isSimulated ? RunMode.Rehearsal : RunMode.Production,
                    Seed = isSimulated ? seed : null,
                    Injected = [.. ready.Faults.Select(fault => fault.ToString())],
                    Only = ready.Only,
                    RetestOf = ready.RetestOf,
                    Note = note,
                },
                stop.Token);
        });
    }

    private IOperator OperatorOf(StationLoop loop, Plant plant, IOperator? hands, OperatorScript? script)
    {
        if (choices.Operator[0] == OperatorChoice.Terminal) return new TerminalOperator(console, loop, Console.In, plant, choices.Language, hands);
        return script is null ? hands! : new ScriptedOperator(script, hands!, loop.Time);
    }
}
