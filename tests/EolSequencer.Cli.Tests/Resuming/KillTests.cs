using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using EolSequencer.Cli.Tests.Kit;

namespace EolSequencer.Cli.Tests.Resuming;

/// <summary>
/// A station whose process is killed again and again goes on with each run when it is started anew: nothing it reported is lost,
/// every run comes to one end, the record is whole. The moments come from one seed; <c>EOL_KILLS</c> makes it longer.
/// </summary>
public sealed partial class KillTests : IDisposable
{
    private const int Seed = 20261201;
    private static readonly int Kills = int.TryParse(Environment.GetEnvironmentVariable("EOL_KILLS"), CultureInfo.InvariantCulture, out var wanted) ? wanted : 50;

    private readonly Eol _eol = new();

    [Fact]
    public async Task Nothing_reported_is_lost_and_every_run_comes_to_its_end()
    {
        var random = new Random(Seed);
        var reported = 0;
        for (var kill = 0; kill < Kills; kill++)
        {
            using var station = Eol.Start(_eol.StartupArguments("--repeat", "1000"));
            var output = station.StandardOutput.ReadToEndAsync();
            await Task.Delay(random.Next(400, 2200), TestContext.Current.CancellationToken);
            Assert.False(station.HasExited, "the station ended by itself");
            station.Kill();
            await station.WaitForExitAsync(TestContext.Current.CancellationToken);
            reported += Progress().Matches(await output).Sum(line => int.Parse(line.Groups["steps"].Value, CultureInfo.InvariantCulture));
        }

        // What is taken up stands on a simulated vehicle that is new, switched off: it comes to its end, and its verdict says so.
        var last = _eol.Startup();
        Assert.True(last.Code is 0 or 1, last.ToString());
        var good = _eol.Startup();
        Assert.True(good.Code == 0, good.ToString());
        var verified = Eol.Run("verify", "--data", _eol.Data);
        Assert.True(verified.Code == 0 && !verified.Output.Contains("has not ended", StringComparison.Ordinal), verified.ToString());
        using var runs = JsonDocument.Parse(Eol.Run("show", "--rehearsals", "--most", "1000000", "--json", "--data", _eol.Data).Output);
        Assert.All(runs.RootElement.EnumerateArray(), run => Assert.False(run.GetProperty("interrupted").GetBoolean(), run.ToString()));
        var recorded = StepsIn(runs.RootElement);
        TestContext.Current.TestOutputHelper?.WriteLine($"{Kills} kills, {runs.RootElement.GetArrayLength()} runs, {reported} steps reported, {recorded} recorded");
        Assert.True(reported <= recorded, $"{reported} steps were reported, {recorded} are in the record");
    }

    public void Dispose() => _eol.Dispose();

    private int StepsIn(JsonElement runs) => runs.EnumerateArray().Sum(run =>
    {
        using var whole = JsonDocument.Parse(Eol.Run("show", run.GetProperty("run").GetString()!, "--json", "--data", _eol.Data).Output);
        return whole.RootElement.GetProperty("steps").GetArrayLength();
    });

    [GeneratedRegex(@"^ +\d+\.\d s +\w+: (?<steps>\d+) steps?", RegexOptions.Multiline)]
    private static partial Regex Progress();
}
