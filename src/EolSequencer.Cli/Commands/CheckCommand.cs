using System.CommandLine;
using EolSequencer.Cli.Output;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Judging;
using EolSequencer.Rehearsal.ExpectedResults;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary><c>eol check</c>: finds every mistake in a plant's files.</summary>
internal static class CheckCommand
{
    public static Command Make(IAnsiConsole console)
    {
        var paths = new Argument<string[]>("FILE|FOLDER") { Description = "What to check; a folder with everything in it.", Arity = ArgumentArity.OneOrMore };
        var plan = new Option<bool>("--plan") { Description = "Plans each sequence named: steps and planned time for every combination of options." };
        var json = JsonOption.Make();
        var command = new Command("check", "Finds every mistake in a plant's files; ends with 2 when there is an error.") { paths, plan, json };
        command.SetAction(parsed => parsed.GetValue(plan)
            ? Plan(console, parsed.GetRequiredValue(paths), parsed.GetValue(json))
            : Check(console, parsed.GetRequiredValue(paths), parsed.GetValue(json)));
        return command;
    }

    private static int Check(IAnsiConsole console, string[] paths, bool asJson)
    {
        var result = PlantChecker.Check(paths, ExpressionsFolder.Open(), new RehearsalKnowledge());
        if (asJson) JsonOutput.Write(console, new { files = result.Files, leftOut = result.LeftOut, diagnostics = result.Diagnostics.Select(DiagnosticLines.AsJson) });
        else Write(console, result);
        return result.HasErrors ? ExitCode.Document : ExitCode.Pass;
    }

    private static int Plan(IAnsiConsole console, string[] paths, bool asJson)
    {
        var results = paths.Select(path => SequenceLoader.Plan(path, ExpressionsFolder.Open())).ToList();
        var plans = results.Select(result => result.Plan).OfType<SequencePlan>().ToList();
        var diagnostics = results.SelectMany(result => result.Diagnostics).Distinct().ToList();
        if (asJson)
        {
            JsonOutput.Write(console, new { plans = plans.Select(PlanTable.AsJson), diagnostics = diagnostics.Select(DiagnosticLines.AsJson) });
        }
        else
        {
            DiagnosticLines.Write(console, diagnostics);
            foreach (var plan in plans) PlanTable.Write(console, plan);
        }

        return plans.Count < results.Count ? ExitCode.Document : ExitCode.Pass;
    }

    private static void Write(IAnsiConsole console, CheckResult result)
    {
        DiagnosticLines.Write(console, result.Diagnostics);
        if (result.LeftOut > 0) console.WriteLine($"… and {result.LeftOut} more");
        var errors = result.Diagnostics.Count(one => one.Severity == Severity.Error);
        var warnings = result.Diagnostics.Count(one => one.Severity == Severity.Warning);
        console.WriteLine($"{Words.Count(result.Files, "file")}: {Words.Count(errors, "error")}, {Words.Count(warnings, "warning")}");
    }
}
