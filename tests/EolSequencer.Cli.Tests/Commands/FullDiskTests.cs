using System.Diagnostics;
using System.Text.Json;
using EolSequencer.Cli.Tests.Kit;

namespace EolSequencer.Cli.Tests.Commands;

/// <summary>The disk fills up while a vehicle is on the station: the program ends as a fault of the equipment and has lost nothing that it had reported.</summary>
[Trait("case", "SQL-07")]
public sealed class FullDiskTests : IDisposable
{
    // A small disk of its own, seen by this shell and its children only. It is filled when the run is under way, and freed
    // again before the record is looked at.
    private const string Script = """
        mount -t tmpfs -o size=40m none "$1" || exit 77
        disk=$1; out=$2; shift 2
        "$@" run --station sequences/demo/stations/startup.yaml --order sequences/demo/orders/FV-100231.yaml --clock real --json --data "$disk/data" >"$out/run.json" 2>"$out/run.err" &
        run=$!
        until [ "$(cat "$disk"/data/*-wal 2>/dev/null | wc -c)" -gt 150000 ]; do
            sleep 0.05
            kill -0 $run || exit 78
        done
        dd if=/dev/zero of="$disk/filler" bs=4096 2>/dev/null
        wait $run
        echo $? >"$out/run.code"
        rm "$disk/filler"
        "$@" verify --data "$disk/data" >"$out/verify.txt" 2>&1
        echo $? >"$out/verify.code"
        "$@" show startup_1-000001 --json --data "$disk/data" >"$out/show.json"
        """;

    private readonly string _out = Directory.CreateTempSubdirectory("eol-full-").FullName;

    [Fact]
    public async Task A_full_disk_ends_the_run_with_3_and_everything_reported_is_kept()
    {
        await RunOnSmallDiskAsync();

        Assert.Equal("3", Read("run.code"));
        Assert.Contains("the record could not be kept to the end: cannot write records: the disk is full", Read("run.err"), StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", Read("run.err"), StringComparison.Ordinal);
        using var reported = JsonDocument.Parse(Read("run.json"));
        Assert.Contains("the disk is full", reported.RootElement.GetProperty("recordFault").GetString(), StringComparison.Ordinal);

        Assert.True(Read("verify.code") == "0", Read("verify.txt"));
        Assert.Contains("startup_1-000001 has not ended", Read("verify.txt"), StringComparison.Ordinal);
        using var kept = JsonDocument.Parse(Read("show.json"));
        var steps = reported.RootElement.GetProperty("steps").EnumerateArray().Select(step => step.GetProperty("step").GetString()!).ToList();
        Assert.NotEmpty(steps);
        Assert.Equal(steps, kept.RootElement.GetProperty("events").EnumerateArray().Where(one => one.TryGetProperty("Measured", out _)).Select(one => one.GetProperty("Step").GetString()!));
    }

    public void Dispose() => Directory.Delete(_out, recursive: true);

    private async Task RunOnSmallDiskAsync()
    {
        if (!OperatingSystem.IsLinux()) Assert.Skip("a small disk is made with a Linux mount");
        var disk = Directory.CreateDirectory(Path.Combine(_out, "disk")).FullName;
        string[] arguments = ["--user", "--map-root-user", "--mount", "sh", "-c", Script, "sh", disk, _out, "dotnet", Path.Combine(AppContext.BaseDirectory, "eol.dll")];
        using var shell = Process.Start(new ProcessStartInfo("unshare", arguments) { WorkingDirectory = Repository.Root, RedirectStandardError = true })!;
        var reading = shell.StandardError.ReadToEndAsync();
        Assert.True(shell.WaitForExit(TimeSpan.FromMinutes(2)), "the run on a full disk did not end");
        var errors = await reading;
        if (!File.Exists(Path.Combine(_out, "run.json"))) Assert.Skip($"no small disk can be mounted here: {errors.Trim()}");
        Assert.True(shell.ExitCode == 0, $"{errors}\n{Read("run.err")}");
    }

    private string Read(string file) => File.ReadAllText(Path.Combine(_out, file)).Trim();
}
