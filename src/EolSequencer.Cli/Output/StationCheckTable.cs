using System.Globalization;
using EolSequencer.Station.Checking;
using EolSequencer.Station.Identifying;
using Spectre.Console;

namespace EolSequencer.Cli.Output;

/// <summary>What was found of a station's equipment: a line for each role, never wrapped, and below it what is wrong.</summary>
internal static class StationCheckTable
{
    public static void Write(IAnsiConsole console, IdentifiedVehicle vehicle, bool isSimulated, IReadOnlyList<CheckedRole> rows)
    {
        var writer = console.Profile.Out.Writer;
        List<string[]> lines = [["role", "adapter", "", "is", "channel", "value", "took"], .. rows.Select(Row)];
        var widths = Enumerable.Range(0, lines[0].Length).Select(column => lines.Max(line => line[column].Length)).ToArray();
        foreach (var line in lines) writer.WriteLine(string.Join("  ", line.Select((cell, column) => cell.PadRight(widths[column]))).TrimEnd());
        foreach (var row in rows.Where(row => !row.IsWell)) writer.WriteLine($"{row.Role}: {row.Fault}");
        var well = rows.Count(row => row.IsWell);
        writer.WriteLine($"station {vehicle.Station.Id}{(isSimulated ? " (simulated)" : "")}, sequence {vehicle.Sequence.Id}, vehicle {vehicle.Order.Vin}: {well} of {Words.Count(rows.Count, "device")} well");
    }

    public static object AsJson(IdentifiedVehicle vehicle, bool isSimulated, IReadOnlyList<CheckedRole> rows) => new
    {
        station = vehicle.Station.Id,
        simulated = isSimulated,
        sequence = vehicle.Sequence.Id,
        vin = vehicle.Order.Vin.ToString(),
        well = rows.All(row => row.IsWell),
        devices = rows.Select(row => new
        {
            role = row.Role,
            kind = row.Kind,
            adapter = row.Adapter,
            well = row.IsWell,
            open = row.IsOpen,
            identity = row.Identity,
            channel = row.Channel,
            value = row.Value,
            tookMs = row.Took?.TotalMilliseconds,
            fault = row.Fault,
        }),
    };

    private static string[] Row(CheckedRole row) =>
    [
        row.Role,
        row.Adapter ?? "none",
        row.IsWell ? "✓ well" : "! not well",
        row.Identity ?? (row.IsOpen ? "no answer" : "not open"),
        row.Channel ?? "–",
        row.Value ?? "–",
        row.Took is { } took ? string.Create(CultureInfo.InvariantCulture, $"{took.TotalMilliseconds:0.0} ms") : "–",
    ];
}
