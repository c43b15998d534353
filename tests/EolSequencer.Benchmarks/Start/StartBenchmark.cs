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
            var plant = Path.Combine(Repository.Root, "sequences", "demo");
            var times = Enumerable.Range(0, args.Contains("small") ? 2 : Starts + 1).Select(_ => FirstStep.After(program, plant, "rest", folder.FullName)).Skip(1).Order().ToList();
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
}
