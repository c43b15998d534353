using System.Collections.Immutable;
using System.Globalization;
using EolSequencer.Records.History;
using EolSequencer.Records.Parts;
using Spectre.Console;

namespace EolSequencer.Cli.Output;

/// <summary>What a vehicle has come to, for people.</summary>
internal static class VehicleTable
{
    public static void Write(IAnsiConsole console, VehicleState vehicle, bool withEveryStep)
    {
        foreach (var one in vehicle.Corrections) console.MarkupLineInterpolated($"{one.Wrong} was corrected to {one.Right} by {one.By}: {one.Reason}");
        if (vehicle.Kinds.IsEmpty)
        {
            console.MarkupLineInterpolated($"{vehicle.Vin} has no whole run here");
            return;
        }

        foreach (var kind in vehicle.Kinds) Write(console, kind, withEveryStep);
        if (!vehicle.Parts.IsEmpty) Write(console, vehicle.Parts);
        console.MarkupLineInterpolated($"{vehicle.Vin}: {(vehicle.HasPassed ? "passed what it has been through" : "has not passed")}");
    }

    private static void Write(IAnsiConsole console, StationKindState kind, bool withEveryStep)
    {
        var retests = kind.Retests.IsEmpty ? "" : $", retests {string.Join(", ", kind.Retests.Select(retest => retest.Run))}";
        var through = kind.IsFirstTimeThrough ? ", first time through" : "";
        console.MarkupLineInterpolated($"{kind.StationKind}: {(kind.HasPassed ? "✓ passed" : "✗ not passed")}{through} (run {kind.Run.Run}{retests})");
        foreach (var run in kind.Unfinished) console.MarkupLineInterpolated($"  run {run} has not ended");
        var steps = kind.Steps.Where(step => withEveryStep || step.IsOpen).ToList();
        if (steps.Count == 0) return;
        var table = new Table { Border = TableBorder.Simple };
        table.AddColumns("step", "counts as", "at first", "value", "window", "run");
        foreach (var step in steps)
        {
            table.AddRow(
                new Text(step.Step), new Markup($"[{Words.Colour(step.Counted)}]{Words.Of(step.Counted)}[/]"), new Text(step.First is { } first ? Words.Of(first) : ""),
                new Text(Value(step)), new Text(Window(step)), new Text(step.Run));
        }

        console.Write(table);
    }

    private static void Write(IAnsiConsole console, ImmutableArray<PartSerial> parts)
    {
        var table = new Table { Border = TableBorder.Simple };
        table.AddColumns("part", "serial", "found (UTC)", "run", "");
        foreach (var part in parts)
        {
            table.AddRow(
                new Text(part.Name), new Text(part.Serial), new Text(part.Found.UtcDateTime.ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture)), new Text(part.Run), new Text(part.Replaced ? "replaced" : ""));
        }

        console.Write(table);
    }

    private static string Value(StepState step) => step.Last switch
    {
        null => "not reached",
        { ValueText: { } value, Unit: var unit } => unit is null ? value : $"{value} {unit}",
        { Cause: var cause } => cause ?? "",
    };

    private static string Window(StepState step) => step.Last is { Low: null, High: null } or null
        ? ""
        : string.Create(CultureInfo.InvariantCulture, $"{step.Last.Low} .. {step.Last.High}");
}
