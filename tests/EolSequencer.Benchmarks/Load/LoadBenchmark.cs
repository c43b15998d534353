using System.Diagnostics;
using EolSequencer.Benchmarks.Plants;
using EolSequencer.Benchmarks.Start;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;

namespace EolSequencer.Benchmarks.Load;

/// <summary>
/// A sequence of 2,500 lines from its file to ready: in a process that has loaded before, by <c>eol run</c> as published, from
/// the start of the process to the run's first step, and by <c>eol check</c>, which besides looks for advice, to its end.
/// </summary>
internal static class LoadBenchmark
{
    public static int Run(string[] args)
    {
        var isSmall = args.Contains("small");
        using var plant = new DemoCopy();
        var path = LongSequence.Write(plant, isSmall ? 800 : 2_500);
        Figures.Print("lines", File.ReadAllLines(path).Length);
        InThisProcess(path, plant.Path("cache"), isSmall ? 3 : 40);
        Published(path, plant, isSmall ? 1 : 7);
        Figures.PrintMachine();
        return 0;
    }

    private static void InThisProcess(string path, string cache, int times)
    {
        for (var time = 0; time < times; time++) Load(path, cache);
        var loads = Enumerable.Range(0, times).Select(_ => Measured(() => Load(path, cache))).ToList();
        Print("load, warm cache, warm process", [.. loads.Select(one => one.Time)]);
        Print("load, warm cache, warm process, work of the thread", [.. loads.Select(one => one.Work)]);
    }

    private static void Published(string path, DemoCopy plant, int times)
    {
        var program = PublishedProgram.Make(plant.Path(".program"));
        Check(program, path, plant.Path(".warm")); // fills the cache
        var (cold, warm, run, empty) = (new List<TimeSpan>(), new List<TimeSpan>(), new List<TimeSpan>(), new List<TimeSpan>());
        for (var time = 0; time < times; time++)
        {
            cold.Add(Check(program, path, plant.Path($".cold{time}")));
            warm.Add(Check(program, path, plant.Path(".warm")));
            run.Add(FirstStep.After(program, plant.Path(), "copy_0.rest", plant.Path(".warm")));
            empty.Add(Start(program, ["--version"], plant.Path(".warm")));
        }

        Print("eol check as published, empty cache", cold);
        Print("eol check as published, warm cache", warm);
        Print("eol run as published, warm cache, to its first step", run);
        Print("eol --version as published", empty);
    }

    private static TimeSpan Check(string program, string path, string home) => Start(program, ["check", path], home);

    /// <param name="home">Where the account's caches are.</param>
    private static TimeSpan Start(string program, string[] arguments, string home)
    {
        Directory.CreateDirectory(home);
        var begun = Stopwatch.GetTimestamp();
        using var process = Process.Start(new ProcessStartInfo(program, arguments)
        {
            RedirectStandardOutput = true,
            Environment = { ["XDG_DATA_HOME"] = home },
        })!;
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0
            ? Stopwatch.GetElapsedTime(begun)
            : throw new InvalidOperationException(output);
    }

    private static void Load(string path, string cache)
    {
        var loaded = SequenceLoader.Load(path, ExpressionCache.In(cache));
        if (!loaded.IsReady) throw new InvalidOperationException(string.Join('\n', loaded.Diagnostics.Take(5)));
    }

    private static (TimeSpan Time, TimeSpan Work) Measured(Action action)
    {
        var (begun, worked) = (Stopwatch.GetTimestamp(), ThreadWork.SoFar);
        action();
        return (Stopwatch.GetElapsedTime(begun), ThreadWork.SoFar - worked);
    }

    private static void Print(string name, List<TimeSpan> times)
    {
        times.Sort();
        Figures.Print($"{name}, median", times[times.Count / 2].TotalMilliseconds, "ms", "0");
        Figures.Print($"{name}, fastest", times[0].TotalMilliseconds, "ms", "0");
    }
}
