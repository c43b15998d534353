using EolSequencer.Cli.Output;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Rehearsal.Replay;
using Spectre.Console;
using Words = EolSequencer.Cli.Output.Words;

namespace EolSequencer.Cli.Replaying;

/// <summary>What came out otherwise, on the terminal.</summary>
internal static class ReplayTable
{
    /// <param name="trouble">What is not as it was written; null when all is.</param>
    public static void Write(IAnsiConsole console, ReplayedRun run, CheckedSequence sequence, string? trouble)
    {
        WriteHead(console, run.Begun, sequence);
        if (trouble is not null) console.MarkupLineInterpolated($"[red]UNVERIFIED[/]: {trouble}");
        WriteChanges(console, run);
        WriteUndecidable(console, run);
        WriteEnd(console, run);
    }

    /// <summary>A verdict, or why there is none.</summary>
    public static string Word(StepStanding standing) => standing.Kind == StandingKind.Judged ? Words.Of(standing.Counted) : standing.Word;

    private static void WriteHead(IAnsiConsole console, RunBegun begun, CheckedSequence sequence)
    {
        console.WriteLine();
        console.MarkupLineInterpolated($"[bold]{begun.Order.Vin}[/]  run {begun.Run}{(begun.Mode == RunMode.Rehearsal ? ", a rehearsal" : "")}, {begun.Sequence} revision {begun.Revision}, judged again by {sequence.Id} revision {sequence.Revision}");
    }

    private static void WriteChanges(IAnsiConsole console, ReplayedRun run)
    {
        var changed = run.Steps.Where(step => step.IsChanged).ToList();
        if (changed.Count > 0)
        {
            var table = new Table { Border = TableBorder.Simple };
            table.AddColumn(new TableColumn("step").NoWrap());
            table.AddColumns("value", "window then", "window now");
            foreach (var name in new[] { "then", "now" }) table.AddColumn(new TableColumn(name).NoWrap());
            foreach (var step in changed) AddRows(table, step);
            console.Write(table);
        }

        var windows = run.Steps.Count(step => !step.IsChanged && !step.IsUndecidable && CriterionChange.In(step).Any(one => one.HasOtherWindow));
        console.WriteLine($"  {Words.Count(changed.Count, "step")} with another verdict, {windows} more with another window and the same verdict, of {run.Steps.Length}");
    }

    private static void AddRows(Table table, ReplayedStep step)
    {
        var criteria = CriterionChange.In(step);
        if (criteria.Count == 0) criteria = [new CriterionChange("", null, null)];
        for (var at = 0; at < criteria.Count; at++)
        {
            var one = criteria[at];
            var (was, now) = criteria.Count > 1 && one is { Was: { } old, Is: { } young } ? (Words.Of(old.Verdict), Words.Of(young.Verdict)) : (Word(step.Was), Word(step.Is));
            table.AddRow(
                new Text(one.Of.Length == 0 ? step.Step : $"{step.Step}[{one.Of}]"), new Text(one.Value ?? step.Why ?? ""), new Text(CriterionChange.Window(one.Was)),
                new Text(CriterionChange.Window(one.Is)), Coloured(was, step.Was.Counted), Coloured(now, step.Is.Counted));
        }
    }

    private static Markup Coloured(string word, Verdict verdict) => new($"[{Words.Colour(verdict)}]{Markup.Escape(word)}[/]");

    private static void WriteUndecidable(IAnsiConsole console, ReplayedRun run)
    {
        foreach (var same in run.Steps.Where(step => step.IsUndecidable).GroupBy(step => step.Why))
        {
            console.MarkupLineInterpolated($"  [yellow]undecidable[/]: {same.Key}");
            foreach (var step in same) console.MarkupLineInterpolated($"      [bold]{step.Step}[/], then {Word(step.Was)}");
        }
    }

    private static void WriteEnd(IAnsiConsole console, ReplayedRun run)
    {
        console.WriteLine($"  then {Numbers(run.Was)}");
        console.WriteLine($"  now  {Numbers(run.Is)}{(run.Undecidable == 0 ? "" : $", {run.Undecidable} undecidable")}");
        var (was, now) = (YesNo(run.WasFirstTimeThrough), YesNo(run.IsFirstTimeThrough));
        console.WriteLine($"  passed at the first attempt: {(was == now ? was : $"then {was}, now {now}")}");
    }

    private static string Numbers(RollUp numbers) =>
        $"{numbers.Verdict.Word()}: {numbers.Pass} pass, {numbers.Fail} fail, {numbers.Error} error, {numbers.Inconclusive} inconclusive, {numbers.None} not judged";

    private static string YesNo(bool? answer) => answer switch { true => "yes", false => "no", _ => "undecidable" };
}
