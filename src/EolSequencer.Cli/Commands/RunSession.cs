using System.Collections.Immutable;
using EolSequencer.Cli.Operators;
using EolSequencer.Cli.Output;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Vehicles;
using EolSequencer.Records;
using StationHold = EolSequencer.Records.Stations.StationHold;
using TakenStation = EolSequencer.Records.Stations.StationResult;
using EolSequencer.Rehearsal.Operators;
using EolSequencer.Rehearsal.Simulated;
using EolSequencer.Simulators.Faults;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary>Loads what a run needs, runs it as often as asked, and says what came of it.</summary>
internal sealed class RunSession(IAnsiConsole console, RunChoices choices)
{
    private readonly List<object> _json = [];

    public int Run()
    {
        if (Prepare() is not { } ready) return ExitCode.Document;
        var opened = DataFolder.Open(choices.Data ?? ready.Station.DataFolder, TimeProvider.System);
        if (opened is not FolderResult<DataFolder>.Opened { Folder: var folder }) return Refusals.Folder(console, opened);
        var taken = folder.TakeStation(ready.Station.Id);
        if (taken is not TakenStation.Taken { Station: var hold }) return Refusals.Equipment(console, ((TakenStation.Refused)taken).Why);
        using (hold)
        using (var stopping = new StopSignals(console))
        {
            var worst = ExitCode.Pass;
            for (var times = 0; times < choices.Repeat && !stopping.IsAsked; times++)
            {
                worst = Worse(worst, RunOnce(ready, hold, choices.Seed + (ulong)times, stopping));
            }

            Finish(folder);
            return worst;
        }
    }

    private sealed record Ready(
        CheckedSequence Sequence, Plant Plant, StationFile Station, Order Order, ImmutableArray<InjectedFault> Faults, OperatorScript? Script);

    /// <summary>Everything loaded and fitting together; null: already told.</summary>
    private Ready? Prepare()
    {
        var cache = ExpressionsFolder.Open();
        var loaded = SequenceLoader.Load(choices.Sequence, cache);
        var station = StationLoader.Load(choices.Station);
        var order = LoadOrder(cache, loaded.Sequence?.VehicleType);
        var script = choices.Operator is [OperatorChoice.Script, var file] ? Language.Scripts.ScriptLoader.Load(file) : null;
        DiagnosticLines.Write(console, loaded.Diagnostics.Concat(station.Diagnostics).Concat(order.Diagnostics).Concat(script?.Diagnostics ?? []).Distinct());
        var faults = ReadFaults(out var fault);
        fault ??= OperatorChoice.Fault(choices.Operator);
        if (fault is null && loaded.Sequence is { } sequence && station.Station is { } bench && order.Order is { } car) fault = Misfit(sequence, bench, car, faults);
        if (fault is not null) Refusals.Document(console, fault);
        return fault is null && loaded is { Sequence: not null, Plant: not null } && station.Station is not null && order.Order is not null && (script is null || script.Script is not null)
            ? new Ready(loaded.Sequence, loaded.Plant, station.Station, order.Order, faults, script?.Script)
            : null;
    }

    private OrderResult LoadOrder(Language.Expressions.ExpressionCache cache, VehicleType? known) => (choices.Order, choices.Vin) switch
    {
        ({ } file, null) => OrderLoader.Load(file, cache, known),
        (null, { } vin) => OrderLoader.LoadFor(choices.Sequence, vin, cache, known),
        _ => new OrderResult(null, []),
    };

    private string? Misfit(CheckedSequence sequence, StationFile station, Order order, ImmutableArray<InjectedFault> faults)
    {
        var isSimulated = SimulatedStation.Serves(station);
        if (order.VehicleType != sequence.VehicleType.Id) return $"order '{order.Id}' is for a vehicle of type '{order.VehicleType}', the sequence '{sequence.Id}' tests '{sequence.VehicleType.Id}'";
        if (station.StationKind != sequence.StationKind) return $"station '{station.Id}' is of kind '{station.StationKind}', the sequence '{sequence.Id}' belongs to '{sequence.StationKind}'";
        if (!isSimulated && !choices.IsReal) return $"station '{station.Id}' has real devices: they need --clock real";
        if (!isSimulated && !faults.IsEmpty) return $"--inject is for simulated vehicles; station '{station.Id}' has none";
        if (choices.Operator[0] == OperatorChoice.Terminal && !choices.IsReal) return "--operator terminal needs --clock real";
        if (!isSimulated && choices.Operator[0] != OperatorChoice.Terminal) return $"station '{station.Id}' has no simulated vehicle to work on: write --operator terminal";
        return choices.Repeat < 1 ? "--repeat counts from 1" : null;
    }

    private ImmutableArray<InjectedFault> ReadFaults(out string? fault)
    {
        fault = (choices.Order, choices.Vin) is (null, null) or (not null, not null) ? "write either --order FILE or --vin VIN" : null;
        var faults = ImmutableArray.CreateBuilder<InjectedFault>();
        foreach (var text in choices.Faults)
        {
            var parsed = FaultText.Parse(text);
            if (parsed.IsRight) faults.Add(parsed.Fault);
            else fault ??= $"--inject {text}: {parsed.Why}; simulators/README.md lists them all";
        }

        return faults.DrainToImmutable();
    }

    private int RunOnce(Ready ready, StationHold hold, ulong seed, StopSignals stopping)
    {
        var journal = hold.BeginRun();
        var progress = new RunProgress(console, console.Profile.Out.IsTerminal);
        var shown = new Station.Running.ShowingJournal(journal, next =>
        {
            if (choices.AsJson) progress.Run.Add(next);
            else progress.Show(next);
        });
        var end = choices.IsReal
            ? new RealRun(console, choices, stopping).Run(ready.Sequence, ready.Plant, ready.Station, ready.Order, journal.Run, shown, seed, ready.Faults, ready.Script)
            : VirtualRun.Run(
                new VirtualRunRequest
                {
                    Run = journal.Run,
                    Sequence = ready.Sequence,
                    Plant = ready.Plant,
                    Station = ready.Station,
                    Order = ready.Order,
                    Journal = shown,
                    Start = TimeProvider.System.GetUtcNow(),
                    Seed = seed,
                    Faults = ready.Faults,
                    Only = [.. choices.Only],
                    Operator = ready.Script is { } script ? (inner, time) => new ScriptedOperator(script, inner, time) : null,
                },
                stopping.Token).End;
        return Tell(end, progress.Run);
    }

    private int Tell(Station.Running.VehicleRunEnd end, RunFold fold)
    {
        foreach (var fault in end.Faults) Refusals.Equipment(console, fault);
        if (end.Result is not { } result) return ExitCode.Error;
        if (choices.AsJson) _json.Add(RunJson.Of(fold));
        else RunTable.Write(console, fold);
        if (result.Fault is { } lost) Refusals.Equipment(console, $"the record could not be kept to the end: {lost}");
        return ExitCode.Of(result.RollUp, result.Interrupted);
    }

    private void Finish(DataFolder folder)
    {
        if (choices.AsJson) JsonOutput.Write(console, _json.Count == 1 ? _json[0] : _json);
        else console.MarkupLineInterpolated($"[grey]record in {folder.Path}; 'eol show --rehearsals --data {choices.Data ?? folder.Path}' lists its rehearsals, 'eol verify' checks it[/]");
    }

    /// <summary>Of several runs the worst decides: error before fail before inconclusive before pass.</summary>
    private static int Worse(int one, int other)
    {
        int[] order = [ExitCode.Pass, ExitCode.Undecided, ExitCode.Fail, ExitCode.Document, ExitCode.Error];
        return Array.IndexOf(order, one) >= Array.IndexOf(order, other) ? one : other;
    }
}
