using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using EolSequencer.Cli.Output;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Plants;
using EolSequencer.Records;
using EolSequencer.Rehearsal.Simulated;
using EolSequencer.Station.Fitness;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary><c>eol fitness</c>: whether a station may run for production now.</summary>
internal static class FitnessCommand
{
    public static Command Make(IAnsiConsole console)
    {
        var station = new Option<string>("--station") { Description = "The station's file.", HelpName = "FILE", Required = true };
        var data = new Option<string?>("--data") { Description = "The data folder; without it the one of the station's file.", HelpName = "DIR" };
        var json = JsonOption.Make();
        var command = new Command("fitness", "Whether a station may run for production: calibration of its instruments, and its check against a reference. At a simulated station, rehearsals of the check are looked at.") { station, data, json };
        command.SetAction(parsed => Look(console, parsed.GetRequiredValue(station), parsed.GetValue(data), parsed.GetValue(json)));
        return command;
    }

    private static int Look(IAnsiConsole console, string file, string? data, bool asJson)
    {
        var told = asJson ? ErrorConsole.Make() : console;
        var (loaded, (plant, found)) = (StationLoader.Load(file), PlantLoader.Load(file));
        DiagnosticLines.Write(told, loaded.Diagnostics.Concat(found).Distinct());
        if (loaded.Station is not { } station || plant is null) return ExitCode.Document;
        var opened = RecordFolder.Open(data ?? station.DataFolder);
        if (opened is not FolderResult<RecordFolder>.Opened { Folder: var record }) return Refusals.Folder(told, opened);
        var now = TimeProvider.System.GetUtcNow();
        var overdue = Calibrations.Overdue(station, plant, now);
        var check = ShiftCheck.State(record.Runs, station, plant, now, SimulatedStation.Serves(station) ? RunMode.Rehearsal : RunMode.Check);
        if (asJson) JsonOutput.Write(console, JsonOf(station, overdue, check));
        else Tell(console, overdue, check);
        return overdue.IsEmpty && check is null or { Outcome: ShiftCheckOutcome.Passed } ? ExitCode.Pass : ExitCode.Fail;
    }

    private static object JsonOf(StationFile station, ImmutableArray<string> overdue, ShiftCheckState? check) => new
    {
        station = station.Id,
        overdue,
        check = check is null ? null : new
        {
            state = check.Outcome.ToString().ToLowerInvariant(),
            shift = check.Since.Shift,
            since = check.Since.From.UtcDateTime.ToString("O", CultureInfo.InvariantCulture),
            run = check.Run?.Run,
            words = check.Words,
        },
    };

    private static void Tell(IAnsiConsole console, ImmutableArray<string> overdue, ShiftCheckState? check)
    {
        foreach (var line in overdue) console.MarkupLineInterpolated($"✗ {line}");
        if (overdue.IsEmpty) console.WriteLine("✓ every instrument is calibrated");
        if (check is null) console.WriteLine("✓ the station's file asks for no check against a reference");
        else console.MarkupLineInterpolated($"{(check.Outcome == ShiftCheckOutcome.Passed ? "✓" : "✗")} {check.Words}");
    }
}
