using System.CommandLine;
using EolSequencer.Cli.Demo;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary><c>eol demo</c>: three invented vehicles through the start-up sequence, in virtual time.</summary>
internal static class DemoCommand
{
    public static Command Make(IAnsiConsole console)
    {
        var data = DataOption.Make();
        var seed = SimulationOptions.Seed();
        var command = new Command("demo", "Three invented vehicles through the start-up sequence of the demo plant, in virtual time; ends with 0 when each came out as it should.") { data, seed };
        command.SetAction(parsed => new DemoRun(console, parsed.GetRequiredValue(data), parsed.GetValue(seed)).Run());
        return command;
    }
}
