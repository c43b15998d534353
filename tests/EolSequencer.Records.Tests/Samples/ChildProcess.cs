using System.Diagnostics;
using System.Globalization;

namespace EolSequencer.Records.Tests.Samples;

/// <summary>A process that writes to a data folder; it is ended by its own id when the test ends at the latest.</summary>
internal sealed class ChildProcess : IDisposable
{
    private readonly Process _process;

    private ChildProcess(Process process) => _process = process;

    public int Id => _process.Id;

    public static ChildProcess Start(string how, TempFolder folder, string station, int runs, int steps)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true };
        string[] arguments = [Path.Combine(AppContext.BaseDirectory, "EolSequencer.Records.Child.dll"), how, folder.Path, station, runs.ToString(CultureInfo.InvariantCulture), steps.ToString(CultureInfo.InvariantCulture)];
        foreach (var argument in arguments) start.ArgumentList.Add(argument);
        return new ChildProcess(Process.Start(start)!);
    }

    /// <summary>Run and number of the next event that the process reports; null when it reports nothing more.</summary>
    public (string Run, int N)? Next() =>
        _process.StandardOutput.ReadLine()?.Split(' ') is [var run, var n] ? (run, int.Parse(n, CultureInfo.InvariantCulture)) : null;

    /// <summary>Everything still to be reported.</summary>
    public IEnumerable<(string Run, int N)> Rest()
    {
        while (Next() is { } reported) yield return reported;
    }

    /// <summary>Ends it at once, as losing it would (SIGKILL).</summary>
    public void Kill()
    {
        _process.Kill();
        _process.WaitForExit();
    }

    public int ExitCode()
    {
        foreach (var reported in Rest()) _ = reported;
        _process.WaitForExit();
        return _process.ExitCode;
    }

    public void Dispose()
    {
        if (!_process.HasExited) Kill();
        _process.Dispose();
    }
}
