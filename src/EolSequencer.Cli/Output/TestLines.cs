using System.Globalization;
using EolSequencer.Model.Judging;
using EolSequencer.Rehearsal.ExpectedResults;
using Spectre.Console;

namespace EolSequencer.Cli.Output;

/// <summary>Tests for people: one line each, and under it what came out otherwise, in the form that editors jump to.</summary>
internal static class TestLines
{
    public static void Write(IAnsiConsole console, IReadOnlyList<TestedFile> files)
    {
        foreach (var file in files)
        {
            console.MarkupLineInterpolated($"[bold]{file.File.Path}[/]");
            var width = file.Outcomes.Max(outcome => outcome.Test.Name.Length);
            foreach (var outcome in file.Outcomes) Write(console, outcome, width);
        }

        var all = files.SelectMany(file => file.Outcomes).ToList();
        var broken = all.Count(outcome => outcome.Trouble is not null);
        var failed = all.Count(outcome => outcome.Trouble is null && !outcome.HasPassed);
        var end = broken == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $", {broken} not to be run");
        console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{Words.Count(all.Count, "test")}: {all.Count - failed - broken} as expected, {failed} otherwise{end}"));
    }

    private static void Write(IAnsiConsole console, ExpectedOutcome outcome, int width)
    {
        var verdict = outcome.Trouble is not null ? Verdict.Error : outcome.HasPassed ? Verdict.Pass : Verdict.Fail;
        var came = outcome.Verdict is { } found ? $"{found.Word()} after {Words.Seconds(outcome.Took)}" : "not run to its end";
        console.MarkupLineInterpolated($"  [{Words.Colour(verdict)}]{Words.Sign(verdict)}[/] {outcome.Test.Name.PadRight(width)}  {came}");

        // Not wrapped: what jumps to a place reads whole lines.
        var lines = console.Profile.Out.Writer;
        if (outcome.Trouble is { } trouble) lines.WriteLine($"{outcome.Test.Place}: {trouble}");
        foreach (var miss in outcome.Misses) lines.WriteLine(TestedFile.LineOf(miss));
    }
}
