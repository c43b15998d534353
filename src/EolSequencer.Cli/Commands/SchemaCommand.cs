using System.CommandLine;
using EolSequencer.Cli.Output;
using EolSequencer.Language.Schema;
using EolSequencer.Model.Judging;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary><c>eol schema</c>: the JSON Schema of all kinds of file, for editors.</summary>
internal static class SchemaCommand
{
    public static Command Make(IAnsiConsole console)
    {
        var file = new Option<string?>("--out") { Description = "File to write it to; without it, it is printed.", HelpName = "FILE" };
        var command = new Command("schema", "Writes the JSON Schema of all kinds of file, for editors (draft 2020-12).") { file };
        command.SetAction(parsed =>
        {
            if (parsed.GetValue(file) is { } path) return TextFile.TryWrite(path, SchemaDocument.Text()) is { } fault ? Refusals.Document(console, fault) : ExitCode.Pass;
            console.Profile.Out.Writer.Write(SchemaDocument.Text());
            return ExitCode.Pass;
        });
        return command;
    }
}
