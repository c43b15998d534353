using System.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;

namespace EolSequencer.Benchmarks.Expressions;

/// <summary>
/// Expressions of a sequence made ready, beside one general-purpose C# script for each; each cold figure comes from a
/// process of its own.
/// </summary>
internal static class ExpressionsBenchmark
{
    private const int Full = 200;
    private const int Small = 20;

    public static int Run(string[] args)
    {
        if (args is ["child", var what, var file, var folder, var number]) return Child(what, file, folder, int.Parse(number, System.Globalization.CultureInfo.InvariantCulture));
        var isSmall = args.Contains("small");
        var count = isSmall ? Small : Full;
        using var plant = new GeneratedPlant(count);
        var ours = Ask("ours", plant, count);
        var scripts = Ask("scripts", plant, count);
        Figures.Print("made ready cold", ours[0], "s");
        Figures.Print("one script each, cold", scripts[0], "s");
        Figures.Print("ratio cold", scripts[0] / ours[0], "", "0.0");
        Figures.Print("made ready warm", ours[1], "s");
        Figures.Print("one script each, warm", scripts[1], "s");
        Figures.Print("ratio warm", scripts[1] / ours[1], "", "0.0");
        var cached = Ask("cached", plant, count);
        Figures.Print("from the cache, whole load in a new process", cached[0] * 1000, "ms", "0");
        Figures.Print("from the cache, when the process is warm", cached[2] * 1000, "ms", "0");
        Figures.Print("compiler assemblies in that process", (long)cached[1]);
        var memory = Ask("reloads", plant, isSmall ? 50 : 1000);
        Figures.Print("reloads", (long)memory[0]);
        Figures.Print("memory after the first tenth", memory[1], "MiB", "0.0");
        Figures.Print("memory after all", memory[2], "MiB", "0.0");
        Figures.Print("assemblies after the first tenth", (long)memory[3]);
        Figures.Print("assemblies after all", (long)memory[4]);
        Figures.PrintMachine();
        if (!isSmall) CallBenchmark.Run(plant.Sequence);
        return 0;
    }

    private static double[] Ask(string what, GeneratedPlant plant, int number)
    {
        using var child = Process.Start(new ProcessStartInfo(
            Environment.ProcessPath!,
            [
                .. Path.GetFileNameWithoutExtension(Environment.ProcessPath!) == "dotnet" ? new[] { typeof(ExpressionsBenchmark).Assembly.Location } : [],
                "expressions", "child", what, plant.Sequence, plant.Cache, number.ToString(System.Globalization.CultureInfo.InvariantCulture),
            ])
        { RedirectStandardOutput = true })!;
        var output = child.StandardOutput.ReadToEnd();
        child.WaitForExit();
        return child.ExitCode == 0
            ? [.. output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => double.Parse(line, System.Globalization.CultureInfo.InvariantCulture))]
            : throw new InvalidOperationException($"the child '{what}' failed: {output}");
    }

    private static int Child(string what, string file, string folder, int number)
    {
        double[] figures = what switch
        {
            "ours" => Compiled(file),
            "scripts" => ScriptReference.Measure(number),
            "cached" => FromCache(file, folder),
            _ => Reloads(file, folder, number),
        };
        foreach (var figure in figures) Console.WriteLine(figure.ToString("R", System.Globalization.CultureInfo.InvariantCulture));
        return 0;
    }

    /// <summary>Cold, and warm after ten emissions; the scripts' second pass comes after as many compilations as there are scripts.</summary>
    private static double[] Compiled(string file)
    {
        var cold = Seconds(() => Load(file, ExpressionCache.None));
        for (var times = 1; times < 10; times++) Load(file, ExpressionCache.None);
        return [cold, Seconds(() => Load(file, ExpressionCache.None))];
    }

    /// <summary>The first child fills the cache; the figure is that of the second one, which finds it filled.</summary>
    private static double[] FromCache(string file, string folder)
    {
        if (!Directory.Exists(folder))
        {
            Load(file, ExpressionCache.In(folder));
            using var again = Process.Start(new ProcessStartInfo(Environment.ProcessPath!, Environment.GetCommandLineArgs() is [var dll, .. var rest]
                ? [.. Path.GetFileNameWithoutExtension(Environment.ProcessPath!) == "dotnet" ? new[] { dll } : [], .. rest]
                : [])
            { RedirectStandardOutput = true })!;
            var lines = again.StandardOutput.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries);
            return [.. lines.Select(line => double.Parse(line, System.Globalization.CultureInfo.InvariantCulture))];
        }

        var whole = Seconds(() => Load(file, ExpressionCache.In(folder)));
        var compilers = AppDomain.CurrentDomain.GetAssemblies().Count(one => one.GetName().Name!.StartsWith("Microsoft.CodeAnalysis", StringComparison.Ordinal));
        var median = Enumerable.Range(0, 5).Select(_ => Seconds(() => Load(file, ExpressionCache.In(folder)))).Order().ElementAt(2);
        return [whole, compilers, median];
    }

    private static double[] Reloads(string file, string folder, int times)
    {
        var (early, earlyCount) = (0.0, 0);
        for (var time = 1; time <= times; time++)
        {
            Load(file, ExpressionCache.In(folder));
            if (time == times / 10) (early, earlyCount) = Memory();
        }

        var (late, lateCount) = Memory();
        return [times, early, late, earlyCount, lateCount];
    }

    private static (double MiB, int Assemblies) Memory()
    {
        for (var times = 0; times < 5; times++)
        {
            GC.Collect();
            GC.WaitForPendingFinalizers();
        }

        return (GC.GetTotalMemory(forceFullCollection: true) / 1024.0 / 1024.0, AppDomain.CurrentDomain.GetAssemblies().Length);
    }

    private static double Seconds(Action action)
    {
        var begun = Stopwatch.GetTimestamp();
        action();
        return Stopwatch.GetElapsedTime(begun).TotalSeconds;
    }

    private static void Load(string file, ExpressionCache cache)
    {
        var loaded = SequenceLoader.Load(file, cache);
        if (!loaded.IsReady) throw new InvalidOperationException(string.Join('\n', loaded.Diagnostics.Take(5)));
    }
}
