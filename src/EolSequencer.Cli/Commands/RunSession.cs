using EolSequencer.Cli.Operators;
using EolSequencer.Cli.Output;
using EolSequencer.Cli.Resuming;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Records;
using EolSequencer.Rehearsal.Simulated;
using EolSequencer.Station.Admitting;
using EolSequencer.Station.Log;
using EolSequencer.Station.Running;
using Spectre.Console;
using StationHold = EolSequencer.Records.Stations.StationHold;
using TakenStation = EolSequencer.Records.Stations.StationResult;

namespace EolSequencer.Cli.Commands;

/// <summary>Runs a sequence as often as asked, and says what came of it.</summary>
/// <param name="console">Where the result goes.</param>
/// <param name="told">Where people read what is wrong and answer prompts; not where a program reads the result.</param>
internal sealed class RunSession(IAnsiConsole console, IAnsiConsole told, RunChoices choices)
{
    private readonly List<object> _json = [];

    public int Run()
    {
        if (new RunPreparation(told, choices).Prepare() is not { } ready) return ExitCode.Document;
        var station = ready.Vehicle.Station;
        var opened = DataFolder.Open(choices.Data ?? station.DataFolder, TimeProvider.System);
        if (opened is not FolderResult<DataFolder>.Opened { Folder: var folder }) return Refusals.Folder(told, opened);
        var taken = folder.TakeStation(station.Id);
        if (taken is not TakenStation.Taken { Station: var hold }) return Refusals.Equipment(told, ((TakenStation.Refused)taken).Why);
        using (hold)
        using (var log = StationLog.Open(folder.Path, station.Id, TimeProvider.System))
        using (var stopping = new StopSignals(told))
        {
            var worst = ExitCode.Pass;
            var goesOn = new Takeover(told, choices, stopping, folder, hold, log).Run(ready);
            if (goesOn is null && Forbidden(ready, folder.Record, log) is { } forbidden) return forbidden;
            for (var times = 0; times < choices.Repeat && !stopping.IsAsked; times++)
            {
                worst = Worse(worst, RunOnce(goesOn ?? New(ready, folder, hold, log, choices.Seed + (ulong)times), log, stopping));
                goesOn = null;
            }

            Finish(folder, log);
            return worst;
        }
    }

    /// <summary>Tells what the record says about running this vehicle now; an exit code when it must not be run.</summary>
    private int? Forbidden(ReadyRun ready, RecordFolder record, StationLog log)
    {
        var mode = SimulatedStation.ModeOf(ready.Vehicle.Station, ready.Vehicle.Sequence);
        var (against, notes) = Admission.Of(record, ready.Vehicle, mode);
        foreach (var note in notes)
        {
            log.Noted(note);
            if (mode == RunMode.Production) told.MarkupLineInterpolated($"[yellow]{note}[/]");
        }

        foreach (var why in against)
        {
            log.Refused(why);
            Refusals.Equipment(told, why);
        }

        return against.IsEmpty ? null : ExitCode.Undecided;
    }

    private OneRun New(ReadyRun ready, DataFolder folder, StationHold hold, StationLog log, ulong seed)
    {
        var journal = hold.BeginRun();
        return new OneRun
        {
            Vehicle = ready.Vehicle,
            Run = journal.Run,
            Journal = journal,
            Note = log.Noted,
            Serials = folder.Record.Serials,
            Runs = folder.Record.Runs,
            Seed = seed,
            Faults = ready.Faults,
            Only = ready.Only,
            RetestOf = ready.RetestOf,
            Script = ready.Script,
        };
    }

    private int RunOnce(OneRun run, StationLog log, StopSignals stopping)
    {
        // Prompts on the same terminal want lines of their own, so nothing is written over there.
        var progress = new RunProgress(console, console.Profile.Out.IsTerminal && choices.Operator is not [OperatorChoice.Terminal]);
        foreach (var past in run.Past) progress.Run.Add(past);
        var shown = run with { Journal = new ShowingJournal(run.Journal, choices.AsJson ? progress.Run.Add : progress.Show, log.Note) };
        var end = choices.IsReal ? new RealRun(told, choices, stopping).Run(shown) : VirtualRun.Run(shown.Virtual(), stopping.Token).End;
        return Tell(end, progress.Run, log);
    }

    private int Tell(VehicleRunEnd end, RunFold fold, StationLog log)
    {
        foreach (var fault in end.Faults)
        {
            log.Refused(fault);
            Refusals.Equipment(told, fault);
        }

        if (end.Result is not { } result) return ExitCode.Error;
        if (choices.AsJson) _json.Add(RunJson.Of(fold, result.Fault));
        else RunTable.Write(console, fold, choices.Language);
        if (result.Fault is { } lost)
        {
            log.RecordFault(lost);
            Refusals.Equipment(told, $"the record could not be kept to the end: {lost}");
        }

        return ExitCode.Of(result.RollUp, result.Interrupted);
    }

    private void Finish(DataFolder folder, StationLog log)
    {
        if (log.Trouble is { } trouble) told.MarkupLineInterpolated($"[yellow]the station's log is not kept[/]: {trouble}");
        if (choices.AsJson) JsonOutput.Write(console, _json.Count == 1 ? _json[0] : _json);
        else console.MarkupLineInterpolated($"[grey]record in {folder.Path}, the station's log in its folder log; 'eol show --rehearsals --data {choices.Data ?? folder.Path}' lists its rehearsals, 'eol verify' checks it[/]");
    }

    /// <summary>Of several runs the worst decides: error before fail before inconclusive before pass.</summary>
    private static int Worse(int one, int other)
    {
        int[] order = [ExitCode.Pass, ExitCode.Undecided, ExitCode.Fail, ExitCode.Document, ExitCode.Error];
        return Array.IndexOf(order, one) >= Array.IndexOf(order, other) ? one : other;
    }
}
