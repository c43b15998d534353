using System.Text.Json;
using EolSequencer.Cli.Tests.Kit;

namespace EolSequencer.Cli.Tests.Commands;

/// <summary>What a run says and how it ends decides what a line does next.</summary>
public sealed class RunTests : IDisposable
{
    private readonly Eol _eol = new();

    [Fact]
    public void A_rehearsal_asks_for_no_other_station_and_the_log_says_so()
    {
        using var plant = new PlantCopy();
        var sequence = Path.Combine("startup", "startup.yaml");
        var text = File.ReadAllText(Path.Combine(plant.Root, sequence));
        plant.Put(sequence, text.Replace("station-kind: startup", "station-kind: startup\nneeds: [torque]", StringComparison.Ordinal));

        var outcome = Eol.Run("run", Path.Combine(plant.Root, sequence), "--station", Path.Combine(plant.Root, "stations", "startup.yaml"), "--vin", "GFVRRNFP7VF100231", "--data", _eol.Data);

        Assert.Equal(0, outcome.Code);
        Assert.Contains("must have passed torque; a rehearsal does not ask for that", File.ReadAllText(Assert.Single(Directory.GetFiles(Path.Combine(_eol.Data, "log"), "startup_1-*.log"))), StringComparison.Ordinal);
    }

    [Fact]
    public void A_good_vehicle_passes_and_ends_with_0()
    {
        var run = _eol.Startup("--json");
        Assert.True(run.Code == 0, run.ToString());
        using var json = JsonDocument.Parse(run.Output);
        Assert.Equal("pass", json.RootElement.GetProperty("verdict").GetString());
        var decided = json.RootElement.GetProperty("steps").EnumerateArray().Count(step => step.GetProperty("measured").GetString() != "none");
        Assert.True(decided >= 190, $"{decided} judged steps");
    }

    [Fact]
    public void A_dead_lamp_fails_and_ends_with_1()
    {
        var run = _eol.Startup("--inject", "lamp_open=tail_left");
        Assert.True(run.Code == 1, run.ToString());
        Assert.Contains("lights.rear", run.Output, StringComparison.Ordinal);
        Assert.Contains("NOT OK", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bus_that_falls_silent_is_the_equipments_fault_and_ends_with_3()
    {
        var run = _eol.Startup("--inject", "bus_silent@120s");
        Assert.True(run.Code == 3, run.ToString());
        Assert.Contains("error", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Only_some_steps_may_be_run_and_the_vehicle_is_found_by_its_number()
    {
        var run = _eol.Startup("--vin", VinOf("FV-100231"), "--only", "rest", "--json");
        using var json = JsonDocument.Parse(run.Output);
        Assert.Contains("rest.voltage", json.RootElement.GetProperty("steps").EnumerateArray().Select(step => step.GetProperty("step").GetString()));
        Assert.DoesNotContain("lights.front", json.RootElement.GetProperty("steps").EnumerateArray().Select(step => step.GetProperty("step").GetString()));
    }

    [Fact]
    public void A_decision_with_uncertainty_tells_its_risk_in_both_forms()
    {
        var run = _eol.Startup("--only", "brake_lamps", "--json");
        using var json = JsonDocument.Parse(run.Output);
        var current = json.RootElement.GetProperty("steps").EnumerateArray().Single(step => step.GetProperty("step").GetString() == "brake_lamps.current");
        var criterion = current.GetProperty("criteria")[0];
        Assert.Equal(("guarded", "0.05"), (criterion.GetProperty("decision").GetString(), criterion.GetProperty("uncertainty").GetString()));
        Assert.InRange(criterion.GetProperty("risk").GetProperty("falseAcceptance").GetDouble(), 0, 0.0228);

        var shown = Eol.Run("show", json.RootElement.GetProperty("run").GetString()!, "--data", _eol.Data);
        Assert.Contains("false acceptance", shown.Output, StringComparison.Ordinal);
        Assert.Contains("JCGM 106", shown.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_sequence_the_one_in_force_is_run_and_the_stations_log_names_it()
    {
        var run = Eol.Run("run", "--station", "sequences/demo/stations/startup.yaml", "--vin", VinOf("FV-100231"), "--only", "rest", "--data", _eol.Data);
        Assert.True(run.Code == 0, run.ToString());
        var lines = File.ReadAllLines(Assert.Single(Directory.GetFiles(Path.Combine(_eol.Data, "log"), "startup_1-*.log")));
        Assert.Equal(4, lines.Length);
        Assert.Contains("run startup_1-000001 begun: rehearsal, sequence startup revision 1, order FV-100231", lines[1], StringComparison.Ordinal);
        Assert.Contains("run startup_1-000001 ended: pass", lines[2], StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_people_are_told_never_stands_in_what_a_program_reads()
    {
        using var run = Eol.Start(_eol.StartupArguments("--only", "rest", "--inject", "battery_voltage=9", "--inject", "nonsense", "--json"));
        var errors = run.StandardError.ReadToEndAsync();
        Assert.Equal("", await run.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken));
        Assert.Contains("nonsense", await errors, StringComparison.Ordinal);
    }

    [Fact]
    public void A_run_lists_its_traces_and_keeps_every_reading()
    {
        var run = _eol.Startup("--only", "running.comfort.window_left", "--json");
        using var json = JsonDocument.Parse(run.Output);
        var traces = json.RootElement.GetProperty("traces").EnumerateArray().ToList();
        Assert.Equal(["bus.window_current[left]", "bus.window_position[left]"], traces.Select(trace => trace.GetProperty("channel").GetString()));
        Assert.All(traces, trace => Assert.False(trace.TryGetProperty("lost", out _)));

        var id = json.RootElement.GetProperty("run").GetString()!;
        using var kept = JsonDocument.Parse(Eol.Run("show", id, "--json", "--data", _eol.Data).Output);
        var points = kept.RootElement.GetProperty("events").EnumerateArray().Where(one => one.TryGetProperty("Points", out _)).Select(one => one.GetProperty("Points").GetArrayLength());
        Assert.Equal(traces.Select(trace => trace.GetProperty("readings").GetInt32()), points);
        Assert.Contains("running.comfort.window_left.travel", Eol.Run("show", id, "--data", _eol.Data).Output, StringComparison.Ordinal);
        Assert.Equal(0, Eol.Run("verify", "--data", _eol.Data).Code);
    }

    [Theory]
    [InlineData("window_current=right", "running.comfort.window_right.current")]
    [InlineData("start_flare", "start.flare")]
    [InlineData("idle_hunting=60", "running.idle.roughness")]
    public void A_fault_that_only_a_trace_shows_fails_its_step(string fault, string step)
    {
        using var json = JsonDocument.Parse(_eol.Startup("--inject", fault, "--json").Output);
        var failed = json.RootElement.GetProperty("steps").EnumerateArray().Where(one => one.GetProperty("counted").GetString() == "fail");
        Assert.Equal([step], failed.Select(one => one.GetProperty("step").GetString()));
    }

    [Fact]
    public void Repeated_runs_take_the_next_seed()
    {
        var run = _eol.Startup("--only", "rest", "--repeat", "3", "--seed", "7", "--json");
        using var json = JsonDocument.Parse(run.Output);
        Assert.Equal([7, 8, 9], json.RootElement.EnumerateArray().Select(one => one.GetProperty("seed").GetInt32()));
    }

    [Fact]
    public void A_second_runner_of_the_same_station_is_refused_and_names_the_first()
    {
        using var first = Eol.Start(_eol.StartupArguments("--clock", "real", "--operator", "terminal"));
        try
        {
            WaitForRecord();
            var second = _eol.Startup("--only", "rest");
            Assert.True(second.Code == 3, second.ToString());
            Assert.Contains(first.Id.ToString(System.Globalization.CultureInfo.InvariantCulture), second.Output, StringComparison.Ordinal);
        }
        finally
        {
            first.Kill();
            first.WaitForExit();
        }
    }

    [Fact]
    public void Ctrl_C_ends_a_run_cleanly_and_the_record_says_interrupted()
    {
        using var run = Eol.Start(_eol.StartupArguments("--clock", "real", "--operator", "terminal"));
        WaitForRecord();
        Thread.Sleep(1500);
        Eol.PressCtrlC(run);
        Assert.True(run.WaitForExit(TimeSpan.FromSeconds(60)));
        Assert.Contains(run.ExitCode, new[] { 1, 3, 4 });
        var list = Eol.Run("show", "--rehearsals", "--json", "--data", _eol.Data);
        using var json = JsonDocument.Parse(list.Output);
        Assert.True(json.RootElement[0].GetProperty("interrupted").GetBoolean());
        Assert.Equal(0, Eol.Run("verify", "--data", _eol.Data).Code);
    }

    [Fact]
    public async Task The_terminal_operator_answers_prompts_by_lines()
    {
        using var run = Eol.Start(_eol.StartupArguments("--clock", "real", "--operator", "terminal", "--only", "identity"));
        run.StandardInput.WriteLine("stop enough seen");
        run.StandardInput.Flush();
        var output = run.StandardOutput.ReadToEndAsync();
        Assert.True(run.WaitForExit(TimeSpan.FromSeconds(90)));
        Assert.Contains("enough seen", await output, StringComparison.Ordinal);
    }

    public void Dispose() => _eol.Dispose();

    private static string VinOf(string order)
    {
        var line = File.ReadLines(Path.Combine(Repository.Root, "sequences", "demo", "orders", order + ".yaml")).First(text => text.StartsWith("vin:", StringComparison.Ordinal));
        return line["vin:".Length..].Split('#')[0].Trim();
    }

    private void WaitForRecord()
    {
        for (var tries = 0; tries < 600 && !File.Exists(Path.Combine(_eol.Data, "record.db")); tries++) Thread.Sleep(100);
        Thread.Sleep(1000);
    }

    [Fact]
    public void What_failed_is_shown_with_its_requirements_and_what_to_look_at_in_the_readers_language()
    {
        var run = _eol.Startup("--inject", "lamp_open=stop_left", "--only", "brake_lamps", "--language", "es");
        Assert.Equal(1, run.Code);
        Assert.Contains("(FV-EL-114, FV-EL-115)", run.Output, StringComparison.Ordinal);
        Assert.Contains("repair: Busque una bombilla apagada", run.Output, StringComparison.Ordinal);

        var id = Eol.Run("show", "--rehearsals", "--data", _eol.Data, "--json").Output.Split("\"run\": \"")[1].Split('"')[0];
        Assert.Contains("repair: Look for a dark bulb", Eol.Run("show", id, "--data", _eol.Data).Output, StringComparison.Ordinal);
        Assert.Contains("\"en\": \"Look for a dark bulb", Eol.Run("show", id, "--data", _eol.Data, "--json").Output, StringComparison.Ordinal);
    }
}
