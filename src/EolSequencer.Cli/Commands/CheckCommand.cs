using System.CommandLine;
using EolSequencer.Cli.Output;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Judging;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary><c>eol check</c>: finds every mistake in a plant's files.</summary>
internal static class CheckCommand
{
    public static Command Make(IAnsiConsole console)
    {
        var paths = new Argument<string[]>("FILE|FOLDER") { Description = "What to check; a folder with everything in it.", Arity = ArgumentArity.OneOrMore };
        var json = JsonOption.Make();
        var command = new Command("check", "Finds every mistake in a plant's files; ends with 2 when there is an error.") { paths, json };
        command.SetAction(parsed =>
        {
            var result = PlantChecker.Check(parsed.GetRequiredValue(paths), ExpressionsFolder.Open());
            if (parsed.GetValue(json)) JsonOutput.Write(console, new { files = result.Files, leftOut = result.LeftOut, diagnostics = result.Diagnostics.Select(DiagnosticLines.AsJson) });
            else Write(console, result);
            return result.HasErrors ? ExitCode.Document : ExitCode.Pass;
        });
        return command;
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
