using System.Diagnostics;

namespace EolSequencer.Benchmarks.Start;

/// <summary>How long a new process of <c>eol run</c> takes to its first step.</summary>
internal static class FirstStep
{
    /// <summary>The line that names the steps planned is printed with the run's first event, before its first step.</summary>
    /// <param name="plant">The demo plant or a copy of it, of which the start-up sequence is run.</param>
    /// <param name="group">The part of the sequence that is run; all of it is loaded.</param>
    /// <param name="home">Where the account's caches are, and the record.</param>
    public static TimeSpan After(string program, string plant, string group, string home)
    {
        var begun = Stopwatch.GetTimestamp();
        using var run = Process.Start(new ProcessStartInfo(
            program,
            [
                "run", Path.Combine(plant, "startup", "startup.yaml"), "--station", Path.Combine(plant, "stations", "startup.yaml"),
                "--order", Path.Combine(plant, "orders", "FV-100231.yaml"), "--only", group, "--data", Path.Combine(home, "data"),
            ])
        {
            RedirectStandardOutput = true,
            Environment = { ["XDG_DATA_HOME"] = home },
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
