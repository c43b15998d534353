using System.Globalization;
using EolSequencer.Cli.Output;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Rehearsal.Replay.WhatIf;
using EolSequencer.Statistics.Proportions;
using Spectre.Console;
using Words = EolSequencer.Cli.Output.Words;

namespace EolSequencer.Cli.Replaying;

/// <summary>What comes out otherwise over many runs, on the terminal.</summary>
internal static class WhatIfTable
{
    private const int MostVehicles = 20;

    private static readonly Verdict[] Shown = [Verdict.Pass, Verdict.Fail, Verdict.Inconclusive, Verdict.Error];

    /// <param name="trouble">What is not as it was written; null when all is.</param>
    public static void Write(IAnsiConsole console, WhatIfResult result, CheckedSequence sequence, WhatIfChoices which, string? trouble)
    {
        console.WriteLine();
        console.MarkupLineInterpolated($"[bold]{Number(result.Runs)} {(which.Rehearsals ? "rehearsals" : "runs")}[/] from {which.From} to {which.To}, judged again by {sequence.Id} revision {sequence.Revision}");
        if (trouble is not null) console.MarkupLineInterpolated($"[red]UNVERIFIED[/]: {trouble}{(result.Troubled > 1 ? $", and {result.Troubled - 1} more" : "")}");
        foreach (var (why, count) in result.LeftOut) console.WriteLine($"  left out, {why}: {Number(count)}");
        WriteSteps(console, result);
        WriteVehicles(console, result);
        WriteFirst(console, result.FirstTimeThrough);
    }

    private static void WriteSteps(IAnsiConsole console, WhatIfResult result)
    {
        var table = new Table { Border = TableBorder.Simple };
        table.AddColumn(new TableColumn("step").NoWrap());
        foreach (var name in new[] { "pass", "fail", "inconcl.", "error", "changed", "undecidable" }) table.AddColumn(new TableColumn(name).RightAligned());
        foreach (var (step, counts) in result.ByStep.Where(step => step.Value.Changed > 0 || step.Value.Undecidable > 0))
        {
            table.AddRow([new Text(step), .. Shown.Select(verdict => new Text(Moved(counts.Was(verdict), counts.Is(verdict)))), new Text(Some(counts.Changed)), new Text(Some(counts.Undecidable))]);
        }

        if (table.Rows.Count > 0) console.Write(table);
        var same = result.ByStep.Values.Count(step => step is { Changed: 0, Undecidable: 0 });
        console.WriteLine($"  {Words.Count(same, "step")} as before, of {result.ByStep.Count}; {Number(result.Steps)} steps judged");
        foreach (var why in result.ByStep.Where(step => step.Value.Why is not null).GroupBy(step => step.Value.Why))
        {
            console.MarkupLineInterpolated($"  [yellow]undecidable[/]: {why.Key}: {string.Join(", ", why.Select(step => step.Key))}");
        }
    }

    private static void WriteVehicles(IAnsiConsole console, WhatIfResult result)
    {
        console.WriteLine($"  {Words.Count(result.Changed.Length, "run")} with another verdict somewhere");
        foreach (var run in result.Changed.Take(MostVehicles))
        {
            var now = run.IsFinal ? Words.Of(run.Is) : $"{Words.Of(run.Is)} at least";
            console.MarkupLineInterpolated($"      {run.Vin}  {run.Run}  {Words.Of(run.Was)} → {now}  [grey]{string.Join(", ", run.Steps.Take(3))}{(run.Steps.Length > 3 ? $" and {run.Steps.Length - 3} more" : "")}[/]");
        }

        if (result.Changed.Length > MostVehicles) console.WriteLine($"      … and {result.Changed.Length - MostVehicles} more; --json has them all");
    }

    private static void WriteFirst(IAnsiConsole console, FirstTimeThrough first)
    {
        console.WriteLine($"  first-time-through of {Words.Count((int)first.Vehicles, "vehicle")}{(first.Undecidable == 0 ? "" : $", {Number(first.Undecidable)} of them undecidable")} (95 % confidence)");
        if (first.ShareThen is not { } then) return;
        console.WriteLine($"      then    {Percent(then)}");
        console.WriteLine($"      now     {Range(first, first.LeastNow!, first.MostNow!, signed: false)}");
        console.WriteLine($"      change  {Range(first, first.LeastChange!, first.MostChange!, signed: true)}; {Number(first.Gained)} gained, {Number(first.Lost)} lost");
    }

    private static string Range(FirstTimeThrough first, ProportionInterval least, ProportionInterval most, bool signed) =>
        first.Undecidable == 0 ? Percent(least, signed) : $"between {Percent(least, signed)} and {Percent(most, signed)}";

    private static string Percent(ProportionInterval share, bool signed = false)
    {
        var form = signed ? "+0.00;-0.00;0.00" : "0.00";
        return string.Create(CultureInfo.InvariantCulture, $"{(100 * share.Estimate).ToString(form, CultureInfo.InvariantCulture)} % ({(100 * share.Low).ToString(form, CultureInfo.InvariantCulture)} .. {(100 * share.High).ToString(form, CultureInfo.InvariantCulture)} %)");
    }

    private static string Moved(long was, long now) => was == now ? Some(was) : $"{Number(was)} → {Number(now)}";

    private static string Some(long number) => number == 0 ? "" : Number(number);

    private static string Number(long number) => number.ToString(CultureInfo.InvariantCulture);
}
