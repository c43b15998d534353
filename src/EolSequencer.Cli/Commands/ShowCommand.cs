using System.CommandLine;
using System.Globalization;
using EolSequencer.Cli.Output;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Records;
using EolSequencer.Records.Reading;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary><c>eol show</c>: the runs of a data folder, or one run in full.</summary>
internal static class ShowCommand
{
    public static Command Make(IAnsiConsole console)
    {
        var run = new Argument<string?>("RUN") { Description = "A run in full; without it the list of runs.", Arity = ArgumentArity.ZeroOrOne };
        var modes = new ModeOptions("Shows rehearsals instead of production runs.", "Shows checks of stations against their references instead of production runs.");
        var most = new Option<int>("--most") { Description = "The most runs to list.", HelpName = "N", DefaultValueFactory = _ => 20 };
        var language = LanguageOption.Make("Language of what authors wrote for repair.");
        var data = DataOption.Make();
        var json = JsonOption.Make();
        var command = new Command("show", "Shows runs, or one run in full.") { run, modes.Rehearsals, modes.Checks, most, language, data, json };
        command.SetAction(parsed =>
        {
            var result = RecordFolder.Open(parsed.GetRequiredValue(data));
            if (result is not FolderResult<RecordFolder>.Opened { Folder: var record }) return Refusals.Folder(console, result);
            var asJson = parsed.GetValue(json);
            var mode = modes.Of(parsed);
            if (parsed.GetValue(run) is { } id) return One(console, record, id, asJson, parsed.GetRequiredValue(language));
            return List(console, record.Runs.List(new RunFilter { Mode = mode, Most = parsed.GetValue(most) }), mode, asJson);
        });
        return command;
    }

    private static int One(IAnsiConsole console, RecordFolder record, string id, bool asJson, string language)
    {
        if (record.Runs.Load(id) is not { } run) return Refusals.Document(console, $"{record.Path} has no run '{id}'; 'eol show' and 'eol show --rehearsals' list them");
        if (asJson) JsonOutput.Write(console, new { run = Line(run.Summary), steps = RunJson.Steps(RunFold.Of(run.Events)), traces = RunJson.Traces(RunFold.Of(run.Events)), events = run.Events.Select(e => (object)e) });
        else RunTable.Write(console, RunFold.Of(run.Events), language);
        return ExitCode.Pass;
    }

    private static int List(IAnsiConsole console, IReadOnlyList<RunSummary> runs, RunMode mode, bool asJson)
    {
        if (asJson)
        {
            JsonOutput.Write(console, runs.Select(Line));
            return ExitCode.Pass;
        }

        if (runs.Count == 0)
        {
            console.WriteLine(mode switch
            {
                RunMode.Production => "no production runs; 'eol show --rehearsals' lists rehearsals",
                RunMode.Check => "no checks of stations",
                _ => "no rehearsals",
            });
            return ExitCode.Pass;
        }

        console.Write(TableOf(runs));
        return ExitCode.Pass;
    }

    private static Table TableOf(IEnumerable<RunSummary> runs)
    {
        var table = new Table { Border = TableBorder.Simple };
        table.AddColumns("run", "begun (UTC)", "vehicle", "station kind", "sequence", "result", "pass", "fail", "error", "inconcl.", "time");
        foreach (var run in runs)
        {
            var verdict = run.End?.Numbers.Verdict ?? Verdict.None;
            var word = run.End is null ? "not ended" : Words.Of(verdict) + (run.End.IsInterrupted ? ", interrupted" : "") + (run.RetestOf is not null ? ", retest" : run.IsPartial ? ", in part" : "");
            table.AddRow(
                new Text(run.Run), new Text(run.Begun.ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture)), new Text(run.Vin), new Text(run.StationKind),
                new Text($"{run.Sequence} {run.Revision}"), new Markup($"[{Words.Colour(verdict)}]{word}[/]"), Number(run.End?.Numbers.Pass),
                Number(run.End?.Numbers.Fail), Number(run.End?.Numbers.Error), Number(run.End?.Numbers.Inconclusive),
                new Text(run.End is null ? "" : Words.Seconds(run.End.Took)));
        }

        return table;
    }

    private static Text Number(int? number) => new(number?.ToString(CultureInfo.InvariantCulture) ?? "");

    private static object Line(RunSummary run) => new
    {
        run = run.Run,
        vin = run.Vin,
        order = run.Order,
        vehicleType = run.VehicleType,
        station = run.Station,
        stationKind = run.StationKind,
        sequence = run.Sequence,
        revision = run.Revision,
        mode = run.Mode.Word(),
        inPart = run.IsPartial,
        retestOf = run.RetestOf,
        conditions = RunJson.Conditions(run.Conditions),
        begun = run.Begun.UtcDateTime.ToString("O", CultureInfo.InvariantCulture),
        verdict = run.End?.Numbers.Verdict.Word(),
        interrupted = run.End?.IsInterrupted,
        numbers = run.End?.Numbers is { } numbers
            ? new { none = numbers.None, pass = numbers.Pass, inconclusive = numbers.Inconclusive, fail = numbers.Fail, error = numbers.Error }
            : null,
        seconds = run.End?.Took.TotalSeconds,
    };
}
