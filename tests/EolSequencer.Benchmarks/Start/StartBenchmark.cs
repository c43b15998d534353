using System.Diagnostics;

namespace EolSequencer.Benchmarks.Start;

/// <summary><c>eol run</c> as published (ReadyToRun), with a warm cache of expressions, from its start to its first step.</summary>
internal static class StartBenchmark
{
    private const int Starts = 9;

    public static int Run(string[] args)
    {
        var folder = Directory.CreateTempSubdirectory("eol-start");
        try
        {
            var program = PublishedProgram.Make(Path.Combine(folder.FullName, "program"));
            var times = Enumerable.Range(0, args.Contains("small") ? 2 : Starts + 1).Select(_ => ToFirstStep(program, folder.FullName)).Skip(1).Order().ToList();
            Figures.Print("start to first step, median", times[times.Count / 2].TotalSeconds, "s");
            Figures.Print("start to first step, fastest", times[0].TotalSeconds, "s");
            Figures.Print("start to first step, slowest", times[^1].TotalSeconds, "s");
            Figures.PrintMachine();
        }
        finally
        {
            folder.Delete(recursive: true);
        }

        return 0;
    }

    /// <summary>The line that names the steps planned is printed with the run's first event, before its first step.</summary>
    private static TimeSpan ToFirstStep(string program, string folder)
    {
        var plant = Path.Combine(Repository.Root, "sequences", "demo");
        var begun = Stopwatch.GetTimestamp();
        using var run = Process.Start(new ProcessStartInfo(
            program,
            [
                "run", Path.Combine(plant, "startup", "startup.yaml"), "--station", Path.Combine(plant, "stations", "startup.yaml"),
                "--order", Path.Combine(plant, "orders", "FV-100231.yaml"), "--only", "rest", "--data", Path.Combine(folder, "data"),
            ])
        {
            RedirectStandardOutput = true,
            WorkingDirectory = folder,
        })!;
        while (run.StandardOutput.ReadLine() is { } line)
        {
            if (!line.Contains("planned", StringComparison.Ordinal)) continue;
            var took = Stopwatch.GetElapsedTime(begun);
            run.StandardOutput.ReadToEnd();
            run.WaitForExit();
            return took;
        }

        throw new InvalidOperationException("the run did not begin");
    }
}
