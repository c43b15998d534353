using System.Globalization;
using EolSequencer.Cli.Output;
using EolSequencer.Model.Judging;
using EolSequencer.Rehearsal.Campaigns;
using Spectre.Console;

namespace EolSequencer.Cli.Rehearsing;

/// <summary>What a campaign has shown, for a terminal: first what is wrong, then what is close, then the numbers.</summary>
internal static class CampaignTables
{
    private const int MostLines = 40;
    private const double Close = 4;

    public static void Write(IAnsiConsole console, CampaignFindings findings, RunsAgain again)
    {
        var writer = console.Profile.Out.Writer;
        Part(writer, "could not run", findings.Troubles, trouble => trouble);
        Part(writer, "good vehicles that did not pass", findings.FalseAlarms, alarm => $"{again.CommandFor(alarm.Run)}\n      {string.Join(", ", alarm.Steps.Select(step => $"{Words.Sign(step.Counted)} {step.Step}"))}");
        Part(writer, "faults of class safety that escape", Together(findings.SafetyEscapes), escaped => Escape(again, escaped));
        Part(writer, "other faults that escape", Together(findings.Escapes.Where(fault => fault.Class != "safety")), escaped => Escape(again, escaped));
        Part(writer, "judged steps of class safety that no fault of the vehicle reaches", findings.SafetyUnreached, step => step.Id);
        Part(writer, "judged steps that no fault makes fail", findings.NeverFailing, step => step.Id);
        Part(writer, "two faults that hide each other", findings.Masked, pair => again.CommandFor(pair.Run));
        Part(writer, "steps whose verdict on good vehicles depends on the seed", findings.Flaky, step => $"{step.Step}: not passed in {step.Worse} of {Words.Count(step.Runs, "run")} ({step.Options})");
        Part(writer, "good vehicles close to a window, in standard deviations", findings.Narrowest.Where(margin => margin.Distance < Close || margin.Outside > 0), Margin);
        Summary(writer, findings);
        writer.WriteLine($"campaign in {again.Campaign}; 'eol rehearse --report {again.Campaign} --html FILE' draws the matrix of faults and steps");
    }

    private static void Part<T>(TextWriter writer, string title, IEnumerable<T> items, Func<T, string> line)
    {
        var all = items.ToList();
        if (all.Count == 0) return;
        writer.WriteLine($"{title}: {all.Count.ToString(CultureInfo.InvariantCulture)}");
        foreach (var item in all.Take(MostLines)) writer.WriteLine($"    {line(item)}");
        if (all.Count > MostLines) writer.WriteLine($"    … and {all.Count - MostLines} more; --json has them all");
        writer.WriteLine();
    }

    /// <summary>Faults of one point in one line.</summary>
    public static IEnumerable<IReadOnlyList<FaultFinding>> Together(IEnumerable<FaultFinding> faults) => faults.GroupBy(fault => fault.Point).Select(group => group.ToList());

    /// <summary>The faults of one point: its name, and the places behind it.</summary>
    public static string NameOf(IReadOnlyList<FaultFinding> faults)
    {
        var places = faults.Where(fault => fault.Text.Length > fault.Point.Length).Select(fault => fault.Text[(fault.Point.Length + 1)..]).ToList();
        return places.Count == 0 ? faults[0].Point : $"{faults[0].Point}={string.Join(", ", places)}";
    }

    private static string Escape(RunsAgain again, IReadOnlyList<FaultFinding> faults) =>
        $"{NameOf(faults)} ({faults[0].Class}: {faults[0].Effect}), caught in {faults.Sum(fault => fault.Caught)} of {Words.Count(faults.Sum(fault => fault.Runs), "run")}\n      {again.CommandFor(faults[0].Escapes[0])}";

    private static string Margin(Margin margin)
    {
        var distance = margin.Distance is { } known ? string.Create(CultureInfo.InvariantCulture, $"{known:0.0}") : "-";
        return string.Create(CultureInfo.InvariantCulture,
            $"{distance,6}  {margin.Step}: mean {margin.Mean:0.####}, s {margin.Deviation:0.####}, window {margin.Low} .. {margin.High}, {margin.Outside} of {margin.Runs} outside ({margin.Options})");
    }

    private static void Summary(TextWriter writer, CampaignFindings findings)
    {
        var culture = CultureInfo.InvariantCulture;
        var head = findings.Head;
        writer.WriteLine(string.Create(culture, $"{head.Sequence} revision {head.Revision} at {head.Station}: {findings.Done} of {Words.Count(head.Jobs, "run")} ({head.Settings})"));
        if (findings.Times is { } times)
        {
            var cycle = head.CycleMicroseconds is { } micros ? string.Create(culture, $" of a cycle time of {micros / 1e6:0} s") : "";
            writer.WriteLine(string.Create(culture, $"good vehicles: {times.Runs - findings.FalseAlarms.Length} of {times.Runs} passed; time p50 {times.Median:0.0} s, p95 {times.P95:0.0} s, longest {times.Longest:0.0} s{cycle}"));
        }

        foreach (var kind in findings.Faults.Where(fault => fault.Runs > 0).GroupBy(fault => fault.Class).OrderBy(group => Array.IndexOf(["safety", "function", "other"], group.Key)))
        {
            writer.WriteLine(string.Create(culture, $"faults of class {kind.Key}: {kind.Count(fault => fault.Escapes.IsEmpty)} of {kind.Count()} caught in all their runs"));
        }

        var judged = findings.Steps.Where(step => step.IsJudged).ToList();
        writer.WriteLine(string.Create(culture, $"judged steps: {judged.Count(step => step.Faults > 0)} of {judged.Count} made fail by some fault, {judged.Count(step => step.VehicleFaults > 0)} by a fault of the vehicle"));
        if (findings.PairRuns > 0) writer.WriteLine(string.Create(culture, $"two faults at a time: {findings.PairRuns} runs, {findings.Masked.Length} hide each other"));
        writer.WriteLine($"result: {Words.Of(findings.IsGood ? Verdict.Pass : Verdict.Fail)}");
    }
}
