using System.Diagnostics;
using System.Globalization;

namespace EolSequencer.Cli.Tests.Kit;

/// <summary>Runs the real program as its user does, in a process of its own, in the repository's folder.</summary>
internal sealed class Eol : IDisposable
{
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(4);

    /// <summary>A data folder of this test's own.</summary>
    public string Data { get; } = Path.Combine(Path.GetTempPath(), "eol-test-" + Guid.NewGuid().ToString("N"));

    /// <summary>What a run printed, and its exit code.</summary>
    public sealed record Outcome(int Code, string Output)
    {
        public override string ToString() => $"exit {Code}\n{Output}";
    }

    /// <summary>Runs to the end.</summary>
    public static Outcome Run(params string[] args) => Run([], args);

    /// <summary>Runs to the end with these variables in its environment, and no input.</summary>
    public static Outcome Run(Dictionary<string, string> environment, string[] args)
    {
        using var process = Start(environment, args);
        var output = process.StandardOutput.ReadToEndAsync();
        var errors = process.StandardError.ReadToEndAsync();
        if (!process.WaitForExit(Longest))
        {
            process.Kill();
            throw new TimeoutException($"eol {string.Join(' ', args)} did not end");
        }

        return new Outcome(process.ExitCode, output.Result + errors.Result);
    }

    /// <summary>Runs the start-up of the demo plant with this test's data folder.</summary>
    public Outcome Startup(params string[] more) => Run(StartupArguments(more));

    /// <summary>The arguments of <see cref="Startup"/>.</summary>
    public string[] StartupArguments(params string[] more)
    {
        string[] order = more.Contains("--order") || more.Contains("--vin") ? [] : ["--order", "sequences/demo/orders/FV-100231.yaml"];
        string[] station = more.Contains("--station") ? [] : ["--station", "sequences/demo/stations/startup.yaml"];
        return ["run", "sequences/demo/startup/startup.yaml", .. station, .. order, "--data", Data, .. more];
    }

    /// <summary>Starts the program and leaves it running.</summary>
    public static Process Start(params string[] args) => Start([], args);

    private static Process Start(Dictionary<string, string> environment, string[] args)
    {
        // Whoever is started in the background of a shell ignores Ctrl-C, and so would the program.
        string[] listening = OperatingSystem.IsLinux() ? ["env", "--default-signal=INT", "dotnet"] : ["dotnet"];
        var start = new ProcessStartInfo(listening[0], [.. listening[1..], Path.Combine(AppContext.BaseDirectory, "eol.dll"), .. args])
        {
            WorkingDirectory = Repository.Root,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            RedirectStandardInput = true,
        };
        foreach (var (name, value) in environment) start.Environment[name] = value;
        return Process.Start(start)!;
    }

    /// <summary>What Ctrl-C does to a program in a terminal.</summary>
    public static void PressCtrlC(Process program)
    {
        using var signal = Process.Start("kill", ["-INT", program.Id.ToString(CultureInfo.InvariantCulture)]);
        signal.WaitForExit();
    }

    public void Dispose()
    {
        if (Directory.Exists(Data)) Directory.Delete(Data, recursive: true);
    }
}
