using System.CommandLine;
using EolSequencer.Cli.Explaining;
using EolSequencer.Cli.Output;
using EolSequencer.Model.Judging;
using EolSequencer.Station.Explaining;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary><c>eol explain</c>: a sequence for one vehicle in words, on the terminal or as a page to print.</summary>
internal static class ExplainCommand
{
    public static Command Make(IAnsiConsole console)
    {
        var sequence = new Argument<string?>("SEQUENCE")
        {
            Description = "The sequence's file; without it the one in force at the station.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var station = new Option<string?>("--station") { Description = "The station's file: says which instruments serve, and which sequence is in force.", HelpName = "FILE" };
        var order = new Option<string?>("--order") { Description = "The vehicle's order, as a file.", HelpName = "FILE" };
        var vin = new Option<string?>("--vin") { Description = "The vehicle's number; its order is looked for in the plant.", HelpName = "VIN" };
        var language = LanguageOption.Make("Language of prompts, cautions, places and hints.");
        var html = new Option<string?>("--html") { Description = "Writes a page to print (HTML, A4) to this file instead.", HelpName = "FILE" };
        var json = JsonOption.Make();
        var command = new Command("explain", "Says what a sequence does on one vehicle, step by step; nothing is run.") { sequence, station, order, vin, language, html, json };
        command.SetAction(parsed =>
        {
            var (sequenceFile, stationFile) = (parsed.GetValue(sequence), parsed.GetValue(station));
            var (orderFile, number) = (parsed.GetValue(order), parsed.GetValue(vin));
            var asJson = parsed.GetValue(json);
            var told = asJson ? ErrorConsole.Make() : console;
            if (sequenceFile is null && stationFile is null) return Refusals.Document(told, "write SEQUENCE, or --station FILE for the one in force there");
            if ((orderFile is null) == (number is null)) return Refusals.Document(told, "write either --order FILE or --vin VIN");
            var (subject, diagnostics) = SubjectFinder.Find(sequenceFile, stationFile, orderFile, number, ExpressionsFolder.Open());
            DiagnosticLines.Write(told, diagnostics);
            if (subject is null) return ExitCode.Document;

            var explanation = Explainer.Of(subject, parsed.GetRequiredValue(language));
            if (parsed.GetValue(html) is { } path && WritePage(explanation, path, told) is var code and not ExitCode.Pass) return code;
            if (asJson) JsonOutput.Write(console, ExplanationJson.Of(explanation));
            else if (parsed.GetValue(html) is null) ExplanationLines.Write(console, explanation);
            return ExitCode.Pass;
        });
        return command;
    }

    private static int WritePage(Explanation explanation, string path, IAnsiConsole told)
    {
        if (TextFile.TryWrite(path, ExplanationPage.Of(explanation)) is { } fault) return Refusals.Document(told, fault);
        told.WriteLine($"{path}: a page to print, {Words.Count(explanation.Steps.Count(), "step")}");
        return ExitCode.Pass;
    }
}
