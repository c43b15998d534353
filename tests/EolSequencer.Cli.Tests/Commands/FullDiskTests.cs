using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using EolSequencer.Cli.Tests.Kit;

namespace EolSequencer.Cli.Tests.Commands;

/// <summary>A disk that fills up under a run, a real one of 40 MiB: the run ends as an error of the equipment, and what was reported stays.</summary>
public sealed partial class FullDiskTests : IDisposable
{
    private readonly DirectoryInfo _disk = Directory.CreateTempSubdirectory("eol-disk-");
    private bool _isMounted;

    [Fact]
    public void A_disk_that_fills_up_ends_the_run_as_an_error_and_nothing_reported_is_lost()
    {
        _isMounted = OperatingSystem.IsLinux() && Environment.IsPrivilegedProcess && Call("mount", "-t", "tmpfs", "-o", "size=40m", "tmpfs", _disk.FullName) == 0;
        if (!_isMounted) Assert.Skip("a disk of its own cannot be mounted here");
        var data = Path.Combine(_disk.FullName, "data");
        using var run = Eol.Start(
            "run", "sequences/demo/startup/startup.yaml", "--station", "sequences/demo/stations/startup.yaml", "--order", "sequences/demo/orders/FV-100231.yaml",
            "--clock", "real", "--operator", "simulated", "--data", data);
        var said = new List<string>();
        while (!said.Exists(line => line.Contains("coding:", StringComparison.Ordinal)) && run.StandardOutput.ReadLine() is { } line) said.Add(line);
        Fill();
        said.Add(run.StandardOutput.ReadToEnd() + run.StandardError.ReadToEnd());
        Assert.True(run.WaitForExit(60_000));

        Assert.Equal(3, run.ExitCode);
        Assert.Contains("the disk is full", said[^1], StringComparison.Ordinal);
        Assert.Equal(0, Eol.Run("verify", "--data", data).Code);
        using var kept = JsonDocument.Parse(Eol.Run("show", "startup_1-000001", "--json", "--data", data).Output);
        Assert.True(kept.RootElement.GetProperty("steps").GetArrayLength() >= said.Sum(Reported), string.Join('\n', said));
        Assert.InRange(said.Sum(Reported), 5, 307);
    }

    public void Dispose()
    {
        if (_isMounted) Call("umount", _disk.FullName);
        _disk.Delete(recursive: true);
    }

    /// <summary>How many steps the lines of progress tell of.</summary>
    private static int Reported(string output) => Progress().Matches(output).Sum(line => int.Parse(line.Groups["steps"].Value, CultureInfo.InvariantCulture));

    private void Fill()
    {
        using var big = new FileStream(Path.Combine(_disk.FullName, "big"), FileMode.Create, FileAccess.Write, FileShare.None, bufferSize: 0);
        try
        {
            while (true) big.Write(new byte[4096]);
        }
        catch (IOException)
        {
            // Full.
        }
    }

    private static int Call(string program, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardError = true })!;
        process.WaitForExit();
        return process.ExitCode;
    }

    [GeneratedRegex(@"^ +\d+\.\d s +\w+: (?<steps>\d+) steps?", RegexOptions.Multiline)]
    private static partial Regex Progress();
}
