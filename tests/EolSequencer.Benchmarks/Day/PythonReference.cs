using System.Diagnostics;

namespace EolSequencer.Benchmarks.Day;

/// <summary>
/// What a general-purpose script needs for one vehicle: 193 request/response tests of pytest over the virtual bus of
/// python-can, the whole process. Left out where these packages are not here.
/// </summary>
internal static class PythonReference
{
    private const string Python = "/usr/bin/python3";
    private const string Script = """
        import can, pytest
        @pytest.fixture(scope="session")
        def buses():
            a, b = can.Bus("day", interface="virtual"), can.Bus("day", interface="virtual")
            yield a, b
            a.shutdown(); b.shutdown()
        @pytest.mark.parametrize("n", range(193))
        def test_exchange(buses, n):
            tester, unit = buses
            tester.send(can.Message(arbitration_id=0x7E0, data=[3, 0x22, 0xF1, n & 0xFF], is_extended_id=False))
            asked = unit.recv(1)
            unit.send(can.Message(arbitration_id=0x7E8, data=[4, 0x62, asked.data[2], asked.data[3], n & 0xFF], is_extended_id=False))
            assert tester.recv(1).data[4] == n & 0xFF
        """;

    /// <summary>Seconds for one vehicle, or why there is no figure.</summary>
    public static (double? Seconds, string? Why) Measure()
    {
        if (!File.Exists(Python)) return (null, $"{Python} is not here");
        var folder = Directory.CreateTempSubdirectory("eol-reference");
        try
        {
            var file = Path.Combine(folder.FullName, "test_day.py");
            File.WriteAllText(file, Script);
            var begun = Stopwatch.GetTimestamp();
            using var process = Process.Start(new ProcessStartInfo(Python, ["-m", "pytest", "-q", "-p", "no:cacheprovider", file])
            {
                RedirectStandardOutput = true,
                RedirectStandardError = true,
                WorkingDirectory = folder.FullName,
            })!;
            var output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return process.ExitCode == 0 && output.Contains("193 passed", StringComparison.Ordinal)
                ? (Stopwatch.GetElapsedTime(begun).TotalSeconds, null)
                : (null, "python3-pytest and python3-can are wanted");
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
