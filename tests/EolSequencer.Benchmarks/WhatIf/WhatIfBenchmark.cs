using System.Diagnostics;
using System.Globalization;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Events;
using EolSequencer.Records;
using EolSequencer.Records.Reading;
using EolSequencer.Rehearsal.Replay;
using EolSequencer.Rehearsal.Replay.WhatIf;

namespace EolSequencer.Benchmarks.WhatIf;

/// <summary>
/// Four weeks of recorded vehicles judged again by a revision with other limits: ledger and seals walked, each run read and checked
/// against its chain, every step judged. The record is made first and is not in the time.
/// </summary>
internal static class WhatIfBenchmark
{
    private const int Full = 28_000;
    private const int Usual = 2_000;
    private const int Small = 60;

    public static int Run(string[] args)
    {
        var vehicles = args.Contains("small") ? Small : args.Contains("full") ? Full : args is [var count] && int.TryParse(count, out var wanted) ? wanted : Usual;
        var plant = Path.Combine(Repository.Root, "sequences", "demo");
        var folder = Directory.CreateTempSubdirectory("eol-whatif");
        try
        {
            var begun = Stopwatch.GetTimestamp();
            History.Write(((FolderResult<DataFolder>.Opened)DataFolder.Open(folder.FullName, TimeProvider.System)).Folder, plant, vehicles);
            Figures.Print("making the history", Stopwatch.GetElapsedTime(begun).TotalSeconds, "s");
            Figures.Print("record bytes", folder.GetFiles("*", SearchOption.AllDirectories).Sum(file => file.Length), "B");
            GC.Collect();
            Figures.Print("peak memory before", Process.GetCurrentProcess().PeakWorkingSet64 / 1024.0 / 1024.0, "MiB", "0");
            Judge(folder.FullName, plant);
        }
        finally
        {
            folder.Delete(recursive: true);
        }

        return 0;
    }

    private static void Judge(string data, string plant)
    {
        var now = new Revision(SequenceLoader.LoadRecorded(Revised(plant), "startup", ExpressionCache.None).Sequence!);
        var used = Environment.CpuUsage.TotalTime;
        var begun = Stopwatch.GetTimestamp();
        var record = ((FolderResult<RecordFolder>.Opened)RecordFolder.Open(data)).Folder;
        var runs = record.CheckRuns();
        var opened = Stopwatch.GetElapsedTime(begun).TotalSeconds;
        var ids = runs.Select(new RunFilter { Mode = RunMode.Rehearsal, Sequence = "startup" });
        var result = new WhatIfRunner(runs, new RecordedRevisions(ExpressionCache.None), now).Run(ids);
        var seconds = Stopwatch.GetElapsedTime(begun).TotalSeconds;
        Figures.Print("seconds", seconds, "s");
        Figures.Print("of it ledger and seals", opened, "s");
        Figures.Print("processor time", (Environment.CpuUsage.TotalTime - used).TotalSeconds, "s");
        Figures.Print("vehicles", result.Runs);
        Figures.Print("steps judged", result.Steps);
        Figures.Print("steps judged in a second", result.Steps / seconds, "", "0");
        Figures.Print("peak memory", Process.GetCurrentProcess().PeakWorkingSet64 / 1024.0 / 1024.0, "MiB", "0");
        Figures.Print("vehicles with another verdict", result.Changed.Length);
        Figures.Print("steps undecidable", result.ByStep.Values.Sum(step => step.Undecidable));
        var first = result.FirstTimeThrough;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"first-time-through: then {first.Was}, now {first.IsAtLeast} to {first.IsAtMost} of {first.Vehicles}; change {100 * first.LeastChange!.Low:0.00} to {100 * first.MostChange!.High:0.00} %"));
        Console.WriteLine($"not as written: {result.Troubled} runs{(result.Trouble is null ? "" : ", " + result.Trouble)}");
        used = Environment.CpuUsage.TotalTime;
        using (var reader = runs.OpenReader(onlyFindings: true))
        {
            foreach (var id in ids) reader.Read(id);
        }

        Figures.Print("processor time of reading alone", (Environment.CpuUsage.TotalTime - used).TotalSeconds, "s");
        Figures.PrintMachine();
    }

    /// <summary>The revision asked about: narrower windows for battery, headlamps and tyres, a shorter time, another reduction.</summary>
    private static IEnumerable<Model.Sequences.SourceCopy> Revised(string plant)
    {
        (string Old, string Young)[] changes =
        [
            ("battery_rest: 12.40 .. 12.90 V", "battery_rest: 12.50 .. 12.80 V"), ("low_left: 3.6 .. 5.2 A", "low_left: 3.9 .. 4.8 A"),
            ("low_right: 3.6 .. 5.2 A", "low_right: 3.9 .. 4.8 A"), ("tyre_pressure: 240 .. 250 kPa", "tyre_pressure: 241 .. 249 kPa"),
            ("takes: .. 10 s", "takes: .. 2.7 s"), ("reduce: mean, expect: limits.idle_speed", "reduce: max, expect: limits.idle_speed"),
        ];
        return SequenceLoader.Load(Path.Combine(plant, "startup", "startup.yaml"), ExpressionCache.None).Sequence!.Sources
            .Select(source => source with { Text = changes.Aggregate(source.Text, (text, change) => text.Replace(change.Old, change.Young, StringComparison.Ordinal)) });
    }
}
