using System.CommandLine;
using EolSequencer.Cli.Commands;
using EolSequencer.Model.Judging;
using Spectre.Console;

var console = AnsiConsole.Console;
if (!console.Profile.Out.IsTerminal) console.Profile.Width = 140; // A file has no width; 80 columns would tear ids apart.
var root = new RootCommand("EolSequencer: end-of-line tests of vehicles.")
{
    DemoCommand.Make(console),
    CheckCommand.Make(console),
    SchemaCommand.Make(console),
    ServeLanguageCommand.Make(),
    ExplainCommand.Make(console),
    ProbeCommand.Make(console),
    StationCheckCommand.Make(console),
    RunCommand.Make(console),
    TestCommand.Make(console),
    RehearseCommand.Make(console),
    ReplayCommand.Make(console),
    ShowCommand.Make(console),
    NonconformityCommand.Make(console),
    RepairCommand.Make(console),
    ReleaseCommand.Make(console),
    BoardCommand.Make(console),
    HoldCommand.Make(console),
    ApproveCommand.Make(console),
    PersonCommand.Make(console),
    ActsCommand.Make(console),
    VehicleCommand.Make(console),
    VinCommand.Make(console),
    ExportCommand.Make(console),
    OrdersCommand.Make(console),
    FitnessCommand.Make(console),
    VerifyCommand.Make(console),
    WitnessCommand.Make(console),
};
var parsed = root.Parse(args);
if (parsed.Errors.Count > 0)
{
    foreach (var error in parsed.Errors) console.MarkupLineInterpolated($"[red]error[/]: {error.Message}");
    console.WriteLine("'eol --help' lists the commands, 'eol COMMAND --help' their options");
    return ExitCode.Document;
}

// A run ends by itself after Ctrl-C: what leaves the vehicle safe takes its time.
return await parsed.InvokeAsync(new InvocationConfiguration { ProcessTerminationTimeout = null });
