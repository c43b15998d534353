using System.Collections.Immutable;
using System.CommandLine;
using EolSequencer.Cli.Administering;
using EolSequencer.Cli.Output;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Plants;
using EolSequencer.Records;
using EolSequencer.Station.Releasing;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary><c>eol nonconformity</c>: what was found wrong with vehicles, and what people decide about it.</summary>
internal static class NonconformityCommand
{
    public static Command Make(IAnsiConsole console) => new("nonconformity", "What was found wrong with vehicles: listed, opened by hand, inspected, conceded.")
    {
        List(console), Open(console), Inspect(console), Concede(console),
    };

    private static Command List(IAnsiConsole console)
    {
        var vin = new Option<string?>("--vin") { Description = "Only of this vehicle.", HelpName = "VIN" };
        var all = new Option<bool>("--all") { Description = "Closed and conceded ones too." };
        var options = new ActOptions();
        var command = new Command("list", "What is open.") { vin, all };
        options.AddLookTo(command);
        command.SetAction(parsed => new ActSession(console, options.Of(parsed)).Look(record =>
        {
            var found = record.Nonconformities.List(parsed.GetValue(vin), parsed.GetValue(all));
            if (parsed.GetValue(options.Json)) JsonOutput.Write(console, found);
            else NonconformityText.Write(console, found);
            return ExitCode.Pass;
        }));
        return command;
    }

    private static Command Open(IAnsiConsole console)
    {
        var vin = ActTexts.Vin();
        var code = new Option<string>("--code") { Description = "What it is, by the plant's catalogue.", HelpName = "CODE", Required = true };
        var place = new Option<string?>("--place") { Description = "Where on the vehicle.", HelpName = "TEXT" };
        var note = ActTexts.Text("--note", "What was seen.");
        var options = new ActOptions();
        var command = new Command("open", "Opens one that a person saw; failed steps open theirs themselves.") { vin, code, place, note };
        options.AddTo(command);
        command.SetAction(parsed => new ActSession(console, options.Of(parsed)).Run(
            (administration, by) => administration.Nonconformities.Open(
                by, parsed.GetRequiredValue(vin), parsed.GetRequiredValue(code), parsed.GetValue(place), parsed.GetRequiredValue(note), CatalogueOf(parsed.GetRequiredValue(options.Data), parsed.GetRequiredValue(vin))),
            NonconformityText.Tell));
        return command;
    }

    /// <summary>The catalogue of the vehicle's plant, as its newest run that counts had it; empty when none is known.</summary>
    private static ImmutableArray<CatalogueCode> CatalogueOf(string data, string vin) =>
        RecordFolder.Open(data) is FolderResult<RecordFolder>.Opened { Folder: var record } && new RecordedPlants(record, ExpressionsFolder.Open()).Of(vin) is { } plant ? plant.Nonconformities : [];

    private static Command Inspect(IAnsiConsole console)
    {
        var id = ActTexts.Nonconformity();
        var found = new Option<string>("--found") { Description = "What was found: ok or not-ok.", HelpName = "ok|not-ok", Required = true }.AcceptOnlyFromAmong("ok", "not-ok");
        var note = ActTexts.Text("--note", "What was looked at.");
        var options = new ActOptions();
        var command = new Command("inspect", "Says what was found by looking, where no step looks; not by who worked on it.") { id, found, note };
        options.AddTo(command);
        command.SetAction(parsed => new ActSession(console, options.Of(parsed)).Run(
            (administration, by) => administration.Nonconformities.Inspect(by, parsed.GetRequiredValue(id), parsed.GetRequiredValue(found) == "ok", parsed.GetRequiredValue(note)),
            NonconformityText.Tell));
        return command;
    }

    private static Command Concede(IAnsiConsole console)
    {
        var id = ActTexts.Nonconformity();
        var reason = ActTexts.Reason();
        var options = new ActOptions();
        var command = new Command("concede", "Lets the vehicle be used as it is; two persons sign.") { id, reason, options.Second };
        options.AddTo(command);
        command.SetAction(parsed => new ActSession(console, options.Of(parsed)).RunTogether(
            (administration, by, second) => administration.Nonconformities.Concede(by, second, parsed.GetRequiredValue(id), parsed.GetRequiredValue(reason)),
            NonconformityText.Tell));
        return command;
    }
}
