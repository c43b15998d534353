using System.CommandLine;
using EolSequencer.Cli.Output;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Judging;
using EolSequencer.Rehearsal.Simulated;
using EolSequencer.Simulators.Time;
using EolSequencer.Station.Checking;
using EolSequencer.Station.Identifying;
using EolSequencer.Station.Time;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary><c>eol station-check</c>: whether a station's equipment is there, before a vehicle is.</summary>
internal static class StationCheckCommand
{
    public static Command Make(IAnsiConsole console)
    {
        var station = new Argument<string>("FILE") { Description = "The station's file." };
        var order = new Option<string?>("--order") { Description = "The order of the vehicle that stands there, as a file; without it the plant's first.", HelpName = "FILE" };
        var vin = new Option<string?>("--vin") { Description = "That vehicle's number; its order is looked for in the plant.", HelpName = "VIN" };
        var sequence = new Option<string?>("--sequence") { Description = "The sequence whose roles are looked at; without it the one in force.", HelpName = "FILE" };
        var seed = SimulationOptions.Seed();
        var inject = SimulationOptions.Inject();
        var adapters = AdaptersOption.Make();
        var json = JsonOption.Make();
        var command = new Command("station-check", "Opens every device of a station, asks what it is and reads one channel; moves, sets and records nothing. Ends with 3 when one is not well.")
        {
            station, order, vin, sequence, seed, inject, adapters, json,
        };
        command.SetAction(parsed =>
        {
            var asJson = parsed.GetValue(json);
            var told = asJson ? ErrorConsole.Make() : console;
            var (file, orderFile, number) = (parsed.GetRequiredValue(station), parsed.GetValue(order), parsed.GetValue(vin));
            if (orderFile is not null && number is not null) return Refusals.Document(told, "write either --order FILE or --vin VIN");
            if (SimulationOptions.Faults(parsed.GetRequiredValue(inject), out var faults) is { } wrong) return Refusals.Document(told, wrong);
            if (AdaptersOption.Load(parsed.GetValue(adapters), out var fault) is not { } real) return Refusals.Document(told, fault!);
            if (orderFile is null && number is null && (orderFile = OrderLoader.FirstIn(file)) is null) return Refusals.Document(told, "the plant has no order; write --order FILE: what the bus offers depends on the vehicle");
            var identified = Identify.Vehicle(new IdentifyRequest
            {
                StationFile = file,
                OrderFile = orderFile,
                Vin = number,
                SequenceFile = parsed.GetValue(sequence),
                Cache = ExpressionsFolder.Open(),
            });
            DiagnosticLines.Write(told, identified.Diagnostics);
            if (identified.Vehicle is not { } vehicle) return ExitCode.Document;
            var isSimulated = SimulatedStation.Serves(vehicle.Station);
            if (!isSimulated && !faults.IsEmpty) return Refusals.Document(told, $"--inject is for simulated vehicles; station '{vehicle.Station.Id}' has none");

            async Task<int> CheckAsync(TimeProvider time)
            {
                using var simulated = isSimulated ? new SimulatedStation(vehicle.Order, time, parsed.GetValue(seed), faults) : null;
                var rows = await StationCheck.RunAsync(
                    vehicle.Station, vehicle.Sequence, vehicle.Order, simulated?.Adapters ?? real, time, note => told.MarkupLineInterpolated($"[yellow]{note}[/]"), CancellationToken.None);
                if (asJson) JsonOutput.Write(console, StationCheckTable.AsJson(vehicle, isSimulated, rows));
                else StationCheckTable.Write(console, vehicle, isSimulated, rows);
                return rows.All(row => row.IsWell) ? ExitCode.Pass : ExitCode.Error;
            }

            if (isSimulated)
            {
                var time = new VirtualTime(TimeProvider.System.GetUtcNow());
                return time.Run(() => CheckAsync(time));
            }

            var loop = new StationLoop(TimeProvider.System);
            return loop.Run(() => CheckAsync(loop.Time));
        });
        return command;
    }
}
