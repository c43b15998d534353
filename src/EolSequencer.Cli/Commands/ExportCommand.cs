using System.CommandLine;
using EolSequencer.Cli.Exporting;
using EolSequencer.Records.Exporting;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary><c>eol export</c>: runs and step results for other programs.</summary>
internal static class ExportCommand
{
    public static Command Make(IAnsiConsole console)
    {
        var subject = new Argument<string>("WHAT") { Description = "runs: a line for each; steps: a line for each step result, every attempt." };
        subject.AcceptOnlyFromAmong("runs", "steps");
        var form = new Option<string>("--form") { Description = "jsonl: a JSON object on each line; csv: a table.", HelpName = "jsonl|csv", DefaultValueFactory = _ => "jsonl" };
        form.AcceptOnlyFromAmong("jsonl", "csv");
        var file = new Option<string?>("--out") { Description = "The file to write, which must not be there yet; without it, standard output.", HelpName = "FILE" };
        var replace = new Option<bool>("--replace") { Description = "Replaces the file." };
        var from = new Option<string?>("--from") { Description = "The first day, as 2026-11-01, by the plant's clock.", HelpName = "DATE" };
        var to = new Option<string?>("--to") { Description = "The last day, it included.", HelpName = "DATE" };
        var station = new Option<string?>("--station") { Description = "Only the runs of this station.", HelpName = "ID" };
        var vin = new Option<string?>("--vin") { Description = "Only the runs of this vehicle.", HelpName = "VIN" };
        var modes = new ModeOptions("Rehearsals instead of production runs; every line says which it is.", "Checks of stations against their references instead of production runs.");
        var data = DataOption.Make();
        var command = new Command("export", "Writes runs or step results as JSON Lines or CSV.") { subject, form, file, replace, from, to, station, vin, modes.Rehearsals, modes.Checks, data };
        command.SetAction(parsed => new ExportSession(console, new ExportChoices
        {
            Subject = parsed.GetRequiredValue(subject) == "runs" ? ExportSubject.Runs : ExportSubject.Steps,
            Form = parsed.GetRequiredValue(form) == "csv" ? ExportForm.Csv : ExportForm.JsonLines,
            File = parsed.GetValue(file),
            Replace = parsed.GetValue(replace),
            From = parsed.GetValue(from),
            To = parsed.GetValue(to),
            Station = parsed.GetValue(station),
            Vin = parsed.GetValue(vin),
            Mode = modes.Of(parsed),
            Data = parsed.GetRequiredValue(data),
        }).Run());
        return command;
    }
}
