using System.CommandLine;
using System.Globalization;
using EolSequencer.Cli.Administering;
using EolSequencer.Cli.Output;
using EolSequencer.Model.Judging;
using EolSequencer.Records.Release;
using EolSequencer.Station.Releasing;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary><c>eol board</c>: the vehicles that wait for their release.</summary>
internal static class BoardCommand
{
    public static Command Make(IAnsiConsole console)
    {
        var most = MostOption.Make(50);
        var options = new ActOptions();
        var command = new Command("board", "Vehicles that were run and are not released: what keeps each of them, since when, and who can act next; who waits longest first.") { most };
        options.AddLookTo(command);
        command.SetAction(parsed => new ActSession(console, options.Of(parsed)).Look(record =>
        {
            var board = record.Releases.Board(parsed.GetValue(most), new Route(record, ExpressionsFolder.Open()).Of);
            if (parsed.GetValue(options.Json)) JsonOutput.Write(console, board);
            else Write(console, board);
            return ExitCode.Pass;
        }));
        return command;
    }

    private static void Write(IAnsiConsole console, ReleaseBoard board)
    {
        foreach (var vehicle in board.Vehicles)
        {
            var state = vehicle.State is { } before ? $", {before}" : "";
            console.MarkupLineInterpolated($"{vehicle.Vin} ({vehicle.VehicleType}{state}), since {Time(vehicle.Since)}, last run {Time(vehicle.Last)}");
            if (vehicle.Obstacles.IsEmpty) console.MarkupLine("  nothing keeps it: quality can release it");
            foreach (var one in vehicle.Obstacles) console.MarkupLineInterpolated($"  ✗ {one.Text} [grey]→ {one.Who}: {one.Next}[/]");
        }

        if (board.InAll == 0) console.MarkupLine("every vehicle that was run is released");
        else console.MarkupLineInterpolated($"[grey]{board.Vehicles.Length} of {board.InAll} vehicles that are not released; times are UTC[/]");
    }

    private static string Time(DateTimeOffset moment) => moment.UtcDateTime.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
}
