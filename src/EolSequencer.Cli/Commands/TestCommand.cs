using System.CommandLine;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary><c>eol test</c>: rehearses the tests of sequences and compares with what they expect.</summary>
internal static class TestCommand
{
    public static Command Make(IAnsiConsole console)
    {
        var paths = new Argument<string[]>("FILE|FOLDER") { Description = "Files of expected results; a folder with all that are in it.", Arity = ArgumentArity.OneOrMore };
        var name = new Option<string[]>("--name")
        {
            Description = "Runs only the tests of this name; may be given again.",
            HelpName = "NAME",
            DefaultValueFactory = _ => [],
            AllowMultipleArgumentsPerToken = true,
        };
        var data = new Option<string?>("--data") { Description = "The data folder that keeps the record; without it nothing is kept.", HelpName = "DIR" };
        var junit = new Option<string?>("--junit") { Description = "Writes the results for a build server, as XML in the form of JUnit; times are virtual seconds.", HelpName = "FILE" };
        var json = JsonOption.Make();
        var command = new Command("test", "Rehearses the tests of sequences, in virtual time; ends with 1 when something came out otherwise than expected.") { paths, name, data, junit, json };
        command.SetAction(parsed => new TestSession(console, new TestChoices
        {
            Paths = parsed.GetRequiredValue(paths),
            Names = parsed.GetRequiredValue(name),
            Data = parsed.GetValue(data),
            JUnit = parsed.GetValue(junit),
            AsJson = parsed.GetValue(json),
        }).Run());
        return command;
    }
}
