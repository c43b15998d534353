using System.Globalization;
using EolSequencer.Language.Loading;
using Spectre.Console;

namespace EolSequencer.Cli.Output;

/// <summary>The plan of a sequence: a line for every combination of options; never wrapped.</summary>
internal static class PlanTable
{
    public static void Write(IAnsiConsole console, SequencePlan plan)
    {
        var writer = console.Profile.Out.Writer;
        List<string[]> rows =
        [
            [.. plan.Options, "steps", "judged", "planned", .. plan.CycleTime is { } cycle ? [$"of {Words.Seconds(cycle)}"] : Array.Empty<string>()],
            .. plan.Vehicles.Select(vehicle => Row(vehicle, plan.CycleTime)),
        ];
        var widths = Enumerable.Range(0, rows[0].Length).Select(column => rows.Max(row => row[column].Length)).ToArray();
        foreach (var row in rows) writer.WriteLine(Line(row, widths, plan.Options.Length));
        writer.WriteLine(Summary(plan));
    }

    public static object AsJson(SequencePlan plan) => new
    {
        sequence = plan.Sequence,
        cycleTimeSeconds = plan.CycleTime?.TotalSeconds,
        pairwise = plan.IsPairwise,
        impossible = plan.Impossible,
        combinations = plan.Vehicles.Select(vehicle => new
        {
            options = plan.Options.Zip(vehicle.Values).ToDictionary(pair => pair.First, pair => pair.Second),
            steps = vehicle.Steps,
            judged = vehicle.Judged,
            plannedSeconds = vehicle.Time.TotalSeconds,
        }),
    };

    private static string[] Row(PlannedVehicle vehicle, TimeSpan? cycle) =>
    [
        .. vehicle.Values,
        vehicle.Steps.ToString(CultureInfo.InvariantCulture),
        vehicle.Judged.ToString(CultureInfo.InvariantCulture),
        Words.Seconds(vehicle.Time),
        .. cycle is { } allowed ? [Share(vehicle.Time, allowed)] : Array.Empty<string>(),
    ];

    private static string Share(TimeSpan time, TimeSpan cycle) =>
        string.Create(CultureInfo.InvariantCulture, $"{100 * (time / cycle):0} %{(time > cycle ? " too long" : "")}");

    // Words stand at the left, numbers at the right.
    private static string Line(string[] row, int[] widths, int words) =>
        string.Join("  ", row.Select((cell, column) => column < words ? cell.PadRight(widths[column]) : cell.PadLeft(widths[column]))).TrimEnd();

    private static string Summary(SequencePlan plan)
    {
        var (steps, judged) = (plan.Vehicles.Select(vehicle => vehicle.Steps).ToList(), plan.Vehicles.Select(vehicle => vehicle.Judged).ToList());
        var times = plan.Vehicles.Select(vehicle => vehicle.Time).ToList();
        var left = plan switch
        {
            { IsPairwise: true } => "more than 4096 exist: pairwise, these show every two values together that can be built",
            { Impossible: 0 } => "all that exist",
            _ => string.Create(CultureInfo.InvariantCulture, $"all but {plan.Impossible} impossible ones"),
        };
        return string.Create(CultureInfo.InvariantCulture,
            $"{plan.Sequence}: {Words.Count(plan.Vehicles.Length, "combination")} ({left}); {steps.Min()} .. {steps.Max()} steps, {judged.Min()} .. {judged.Max()} judged, {Words.Seconds(times.Min())} .. {Words.Seconds(times.Max())} planned");
    }
}
