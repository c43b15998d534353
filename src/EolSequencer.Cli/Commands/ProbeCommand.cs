using System.CommandLine;
using EolSequencer.Cli.Output;
using EolSequencer.Cli.Probing;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Judging;
using EolSequencer.Rehearsal.Simulated;
using EolSequencer.Station.Identifying;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary><c>eol probe</c>: an engineer's scratch pad on a live or simulated station; nothing of it enters a record.</summary>
internal static class ProbeCommand
{
    public static Command Make(IAnsiConsole console)
    {
        var station = new Option<string>("--station") { Description = "The station's file.", HelpName = "FILE", Required = true };
        var order = new Option<string?>("--order") { Description = "The vehicle's order, as a file; a simulated station takes the plant's first when nothing is said.", HelpName = "FILE" };
        var vin = new Option<string?>("--vin") { Description = "The vehicle's number; its order is looked for in the plant.", HelpName = "VIN" };
        var clock = ClockOption.Make();
        var seed = SimulationOptions.Seed();
        var inject = SimulationOptions.Inject();
        var adapters = AdaptersOption.Make();
        var command = new Command("probe", "Reads channels, does actions and tries C# at a prompt, on a live or simulated station; nothing is recorded. 'help' there lists its commands; they may also come from a pipe.")
        {
            station, order, vin, clock, seed, inject, adapters,
        };
        command.SetAction(parsed =>
        {
            var file = parsed.GetRequiredValue(station);
            var (orderFile, number) = (parsed.GetValue(order), parsed.GetValue(vin));
            if (orderFile is not null && number is not null) return Refusals.Document(console, "write either --order FILE or --vin VIN");
            if (SimulationOptions.Faults(parsed.GetRequiredValue(inject), out var faults) is { } wrong) return Refusals.Document(console, wrong);
            if (AdaptersOption.Load(parsed.GetValue(adapters), out var fault) is not { } real) return Refusals.Document(console, fault!);
            var isSimulated = StationLoader.Load(file).Station is { } read && SimulatedStation.Serves(read);
            if (orderFile is null && number is null && isSimulated) orderFile = OrderLoader.FirstIn(file);
            if (orderFile is null && number is null) return Refusals.Document(console, "write --order FILE or --vin VIN: what the bus offers depends on the vehicle");
            var identified = Identify.Vehicle(new IdentifyRequest { StationFile = file, OrderFile = orderFile, Vin = number, Cache = ExpressionsFolder.Open() });
            DiagnosticLines.Write(console, identified.Diagnostics);
            if (identified.Vehicle is not { } vehicle) return ExitCode.Document;
            if (!isSimulated && !faults.IsEmpty) return Refusals.Document(console, $"--inject is for simulated vehicles; station '{vehicle.Station.Id}' has none");
            var choices = new ProbeChoices(vehicle, faults, parsed.GetValue(seed), !isSimulated || parsed.GetValue(clock) == ClockOption.Real, real);
            return new ProbeRun(choices, Console.In, console.Profile.Out.Writer, !Console.IsInputRedirected).Run();
        });
        return command;
    }
}
