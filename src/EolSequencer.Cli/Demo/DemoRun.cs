using EolSequencer.Cli.Commands;
using EolSequencer.Cli.Output;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Plants;
using EolSequencer.Records;
using EolSequencer.Rehearsal.Simulated;
using EolSequencer.Simulators.Faults;
using EolSequencer.Station.Log;
using EolSequencer.Station.Running;
using Spectre.Console;
using StationHold = EolSequencer.Records.Stations.StationHold;
using TakenStation = EolSequencer.Records.Stations.StationResult;

namespace EolSequencer.Cli.Demo;

/// <summary>Runs the demonstration and compares what came of each vehicle with what should.</summary>
internal sealed class DemoRun(IAnsiConsole console, string data, ulong seed)
{
    public int Run()
    {
        if (DemoPlant.Find() is not { } plant) return Refusals.Document(console, "the demo plant is not here; run it inside the repository (sequences/demo)");
        var cache = ExpressionsFolder.Open();
        var sequence = SequenceLoader.Load(Path.Combine(plant, "startup", "startup.yaml"), cache);
        var station = StationLoader.Load(Path.Combine(plant, "stations", "startup.yaml"));
        var orders = DemoVehicle.All.Select(vehicle => OrderLoader.Load(Path.Combine(plant, "orders", vehicle.Order), cache)).ToList();
        var diagnostics = sequence.Diagnostics.Concat(station.Diagnostics).Concat(orders.SelectMany(order => order.Diagnostics)).Distinct().ToList();
        DiagnosticLines.Write(console, diagnostics);
        if (diagnostics.Exists(one => one.Severity == Severity.Error)) return ExitCode.Document;

        var opened = DataFolder.Open(data, TimeProvider.System);
        if (opened is not FolderResult<DataFolder>.Opened { Folder: var folder }) return Refusals.Folder(console, opened);
        var taken = folder.TakeStation(station.Station!.Id);
        if (taken is not TakenStation.Taken { Station: var hold }) return Refusals.Equipment(console, ((TakenStation.Refused)taken).Why);
        using (hold)
        using (var log = StationLog.Open(folder.Path, station.Station.Id, TimeProvider.System))
        using (var stopping = new StopSignals(console))
        {
            var right = 0;
            for (var at = 0; at < DemoVehicle.All.Length && !stopping.IsAsked; at++)
            {
                if (RunOne(DemoVehicle.All[at], sequence, station.Station, orders[at].Order!, hold, log, stopping)) right++;
            }

            return Finish(folder, right);
        }
    }

    private bool RunOne(DemoVehicle vehicle, LoadResult sequence, StationFile station, Model.Vehicles.Order order, StationHold hold, StationLog log, StopSignals stopping)
    {
        console.WriteLine();
        console.MarkupLineInterpolated($"[bold]▶ {vehicle.Story}[/]");
        var journal = hold.BeginRun();
        var progress = new RunProgress(console, console.Profile.Out.IsTerminal);
        var end = VirtualRun.Run(
            new VirtualRunRequest
            {
                Run = journal.Run,
                Sequence = sequence.Sequence!,
                Plant = sequence.Plant!,
                Station = station,
                Order = order,
                Journal = new ShowingJournal(journal, progress.Show, log.Note),
                Start = TimeProvider.System.GetUtcNow(),
                Seed = seed,
                Note = log.Noted,
                Faults = [.. vehicle.Faults.Select(fault => FaultText.Parse(fault).Fault!)],
            },
            stopping.Token);
        RunTable.Write(console, progress.Run, LanguageOption.Default);
        foreach (var fault in end.End.Faults)
        {
            log.Refused(fault);
            Refusals.Equipment(console, fault);
        }

        if (end.End.Result?.Fault is { } lost) log.RecordFault(lost);
        return CameOutRight(vehicle, progress.Run);
    }

    private bool CameOutRight(DemoVehicle vehicle, RunFold run)
    {
        var missed = run.Results.Where(result => result.Counted > Verdict.Pass).Select(result => result.Step).ToHashSet();
        var escaped = vehicle.Caught.Where(step => !missed.Contains(step)).ToList();
        var right = run.Ended?.RollUp.Verdict == vehicle.Verdict && escaped.Count == 0;
        if (right) console.MarkupLineInterpolated($"[green]✓ as it should be[/]: {vehicle.Verdict.Word()}");
        else if (escaped.Count > 0) console.MarkupLineInterpolated($"[red]✗ not as it should be[/]: {string.Join(", ", escaped)} passed");
        else console.MarkupLineInterpolated($"[red]✗ not as it should be[/]: {vehicle.Verdict.Word()} was due");
        return right;
    }

    private int Finish(DataFolder folder, int right)
    {
        var whole = folder.Record.Verify().IsWhole;
        var all = right == DemoVehicle.All.Length;
        console.WriteLine();
        console.WriteLine($"{right} of {DemoVehicle.All.Length} vehicles came out as they should; the record is {(whole ? "whole" : "NOT whole")}.");
        console.WriteLine($"The record is in {folder.Path}, the station's log in its folder log. What to type next (eol stands for: dotnet run --project src/EolSequencer.Cli --):");
        console.WriteLine($"  eol show --rehearsals --data {data}       the runs; then: eol show RUN --data {data}");
        console.WriteLine($"  eol verify --data {data}                  walks ledger, chains and seals");
        console.WriteLine("  eol check sequences/demo                     after a change to any file of the plant");
        return all && whole ? ExitCode.Pass : ExitCode.Fail;
    }
}
