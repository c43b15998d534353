using System.CommandLine;
using EolSequencer.Cli.Administering;
using EolSequencer.Cli.Output;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary><c>eol vehicle</c>: what a vehicle has come to at each station kind, step by step.</summary>
internal static class VehicleCommand
{
    public static Command Make(IAnsiConsole console)
    {
        var vin = new Argument<string>("VIN") { Description = "The vehicle's identification number." };
        var rehearsals = new Option<bool>("--rehearsals") { Description = "Its rehearsals instead of its production runs." };
        var all = new Option<bool>("--steps") { Description = "Lists every step, not only those that did not pass." };
        var options = new ActOptions();
        var command = new Command("vehicle", "What a vehicle has come to: its newest whole run at each station kind with the retests of it.") { vin, rehearsals, all };
        options.AddLookTo(command);
        command.SetAction(parsed => new ActSession(console, options.Of(parsed)).Look(record =>
        {
            var state = record.Vehicles.Of(parsed.GetRequiredValue(vin), parsed.GetValue(rehearsals) ? RunMode.Rehearsal : RunMode.Production);
            if (parsed.GetValue(options.Json)) JsonOutput.Write(console, VehicleJson.Of(state));
            else VehicleTable.Write(console, state, parsed.GetValue(all));
            return state.HasPassed ? ExitCode.Pass : state.Kinds.IsEmpty ? ExitCode.Undecided : ExitCode.Fail;
        }));
        return command;
    }
}
