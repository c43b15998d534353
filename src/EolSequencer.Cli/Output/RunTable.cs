using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Station.Fitness;
using Spectre.Console;

namespace EolSequencer.Cli.Output;

/// <summary>A run as a table: group by group, and under it what did not pass.</summary>
internal static class RunTable
{
    public static void Write(IAnsiConsole console, RunFold run, string language)
    {
        if (run.Begun is not { } begun) return;
        WriteHead(console, begun, run.Conditions);
        console.Write(Groups(run));
        WriteMisses(console, run, language);
        WriteRisks(console, run);
        WriteTraces(console, run);
        WriteEnd(console, run);
    }

    /// <summary>The part of an id that names its group at the top.</summary>
    public static string GroupOf(string step)
    {
        var end = step.AsSpan().IndexOfAny('.', '[');
        return end < 0 ? step : step[..end];
    }

    private static void WriteHead(IAnsiConsole console, RunBegun begun, IReadOnlyList<Condition> conditions)
    {
        var options = string.Join(", ", begun.Order.Options.Select(option => $"{option.Key} {option.Value}"));
        console.WriteLine();
        console.MarkupLineInterpolated($"[bold]{begun.Order.Vin}[/]  {begun.Order.VehicleType}: {options}");
        console.MarkupLineInterpolated($"run {begun.Run}, {begun.Sequence} revision {begun.Revision}, station {begun.Station}{Rehearsal(begun)}");
        if (conditions.Count > 0) console.MarkupLineInterpolated($"conditions: {string.Join(", ", conditions.Select(one => $"{one.Name} {one.Words}"))}");
        foreach (var overdue in Calibrations.OverdueIn(begun).Concat(begun.Unfit)) console.MarkupLineInterpolated($"[magenta]![/] {overdue}");
    }

    private static string Rehearsal(RunBegun begun)
    {
        if (begun.Mode == RunMode.Production) return "";
        if (begun.Mode == RunMode.Check) return ", a check of the station";
        var faults = begun.Injected.IsEmpty ? "no fault put in" : $"faults put in: {string.Join(", ", begun.Injected)}";
        return $", rehearsal (seed {begun.Seed}, {faults})";
    }

    private static Table Groups(RunFold run)
    {
        var table = new Table { Border = TableBorder.Simple };
        table.AddColumn(new TableColumn("group").NoWrap());
        foreach (var name in new[] { "steps", "pass", "fail", "error", "inconcl.", "not judged" }) table.AddColumn(new TableColumn(name).RightAligned());
        table.AddColumn(new TableColumn("result").NoWrap());
        foreach (var group in run.Results.GroupBy(result => GroupOf(result.Step)))
        {
            var numbers = RollUp.Of(group.Select(result => result.Counted));
            table.AddRow(
                new Text(group.Key), Number(group.Count()), Number(numbers.Pass), Number(numbers.Fail), Number(numbers.Error),
                Number(numbers.Inconclusive), Number(numbers.None), new Markup($"[{Words.Colour(numbers.Verdict)}]{Words.Of(numbers.Verdict)}[/]"));
        }

        return table;
    }

    private static Text Number(int number) => new(number == 0 ? "" : number.ToString(System.Globalization.CultureInfo.InvariantCulture));

    private static void WriteMisses(IAnsiConsole console, RunFold run, string language)
    {
        foreach (var miss in run.Results.Where(result => result.Counted > Verdict.Pass))
        {
            console.MarkupLineInterpolated($"  [{Words.Colour(miss.Counted)}]{Words.Of(miss.Counted)}[/]  [bold]{miss.Step}[/]  {Words.Finding(miss)}{Words.Requirements(miss)}");
            if (miss.Repair is { } repair) console.MarkupLineInterpolated($"      repair: {repair.For(language)}");
        }

        if (run.Ended is not { NotReached: { IsEmpty: false } left }) return;
        var groups = string.Join(", ", left.Select(GroupOf).Distinct());
        console.MarkupLineInterpolated($"  [yellow]{Words.Of(Verdict.Inconclusive)}[/]  {Words.Count(left.Length, "step")} not reached, in {groups}");
    }

    private static void WriteRisks(IAnsiConsole console, RunFold run)
    {
        var risks = run.Results.SelectMany(DecisionRisk.In).ToList();
        if (risks.Count == 0) return;
        var table = new Table { Border = TableBorder.Simple };
        table.AddColumns("decision with uncertainty", "value", "window", "U", "rule", "result", "risk");
        foreach (var risk in risks)
        {
            var one = risk.Criterion;
            var unit = one.Unit is null ? "" : $" {one.Unit}";
            table.AddRow(
                new Text(risk.Of), new Text($"{one.Value}{unit}"), new Text(one.Expected ?? ""), new Text($"{one.Uncertainty}{unit}"),
                new Text(one.IsGuarded ? "guarded" : "simple"), new Markup($"[{Words.Colour(one.Verdict)}]{Words.Of(one.Verdict)}[/]"), new Text(risk.ToString()));
        }

        console.Write(table);
        console.WriteLine($"  {DecisionRisk.Assumed}");
    }

    private static void WriteTraces(IAnsiConsole console, RunFold run)
    {
        if (run.Traces.Count == 0) return;
        var table = new Table { Border = TableBorder.Simple };
        table.AddColumns("trace", "channel", "readings", "from", "lasts", "continuity");
        foreach (var trace in run.Traces)
        {
            var (from, length, lost) = trace.Capture!;
            table.AddRow(
                new Text(trace.Step), new Text(trace.Channel), Number(trace.Points.Count(point => point.Value is not null)), new Text(Words.Seconds(TimeSpan.FromMicroseconds(from))),
                new Text(Words.Seconds(TimeSpan.FromMicroseconds(length))), new Text(lost is null ? "kept" : $"not kept: {lost}"));
        }

        console.Write(table);
    }

    private static void WriteEnd(IAnsiConsole console, RunFold run)
    {
        if (run.Stopped is { } stopped) console.MarkupLineInterpolated($"  stopped: {stopped.Reason}");
        if (run.Ended is not { } ended)
        {
            console.MarkupLine("  the run has not ended");
            return;
        }

        var lines = string.Join(" / ", ended.RollUp.ScreenLines);
        var numbers = ended.RollUp;
        console.MarkupLineInterpolated(
            $"[bold {Words.Colour(numbers.Verdict)}]{lines}[/]  {numbers.Verdict.Word()}: {numbers.Pass} pass, {numbers.Fail} fail, {numbers.Error} error, {numbers.Inconclusive} inconclusive, {numbers.None} not judged, in {Words.Seconds(run.At)}{(ended.Interrupted ? ", interrupted" : "")}");
    }
}
