using System.Text.Json;
using System.Text.RegularExpressions;
using EolSequencer.Cli.Tests.Kit;
using Snapshooter.Xunit3;

namespace EolSequencer.Cli.Tests.Commands;

/// <summary>A test of a sequence is worth what it catches: each kind of expectation must fail when it is wrong, and say where.</summary>
public sealed partial class TestCommandTests : IDisposable
{
    /// <summary>Each test is wrong in one way; none may come out as it says.</summary>
    private const string Wrong = """
        expected-results: wrong
        station: startup_1
        order: FV-100231
        tests:
          whole_run: { verdict: fail, others: any }
          step: { verdict: fail, steps: { rest.voltage: fail } }
          loop: { verdict: inconclusive, steps: { lamps.current: inconclusive, 'lamps[plate].current': pass }, only: [lamps] }
          number: { verdict: pass, steps: { rest.voltage: { is: 12.64 .. 13 V }, coding.nodes: { is: equals 13 } } }
          other_unit: { verdict: pass, steps: { rest.voltage: { is: at most 12500 mV } } }
          text: { verdict: pass, steps: { identity.rims: { is: equals alloy }, coding.serial: { is: "matches /[A-Z]+/" } } }
          list: { verdict: pass, steps: { trouble_codes.bench_caused: { is: empty }, restraint.codes: { is: "only [B1]", took: 1 s .. } } }
          truth: { verdict: pass, steps: { coding.transport_mode: { is: no } } }
          time: { verdict: pass, steps: { brake_lamps.sink: { took: .. 1.9 s, started: at least 70 s } } }
          attempts: { verdict: pass, faults: [pedal_let_go], steps: { brake_lamps.sink: { attempts: 1 } } }
          no_value:
            verdict: fail
            faults: [unit_silent=restraint]
            only: ["control_units[restraint]"]
            steps: { "control_units[restraint].software": { is: equals FV7-RST-0209, cause: refused } }
            others: any
          others: { verdict: pass, faults: [lamp_open=tail_left] }
          too_few: { verdict: fail, faults: [lamp_open=tail_left], steps: { lights.rear: fail } }
          other_index: { verdict: fail, faults: ["squib_loop=driver_bag:4.2"], steps: { "restraint.loops[side_left]": pass } }
          index: { verdict: pass, steps: { "restraint.loops[side_left]": { verdict: fail, is: 2.2 .. 2.4 ohm } } }
          all_indexes: { verdict: pass, steps: { restraint.loops: { is: 2.1 .. 2.4 ohm } } }
          needed: { verdict: inconclusive, steps: { signals.left.telltale: not-needed, standstill.coupling: pass, rest.voltage: not-reached } }
          left_out: { verdict: pass, only: [rest], steps: { brake_lamps.current: { took: .. 1 s } } }
          not_applicable: { order: FV-100233, verdict: pass, steps: { 'ignition.lit[engine].shown': pass } }
          not_fitted: { verdict: pass, faults: [trailer_not_seen] }
          not_reached: { verdict: error, faults: [scans_other_label], steps: { identity.label: fail, coding.awake: inconclusive, session_end: error } }

        """;

    private readonly PlantCopy _plant = new();

    public void Dispose() => _plant.Dispose();

    [Fact]
    public void The_tests_of_the_demo_plant_come_out_as_expected()
    {
        var outcome = Eol.Run("test", "sequences/demo");

        Assert.True(outcome.Code == 0, outcome.ToString());
        Assert.Contains("0 otherwise", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("sequences/demo/startup/startup.expect.yaml", outcome.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_kind_of_wrong_expectation_fails_and_says_where_what_and_what_instead()
    {
        var outcome = Eol.Run("test", _plant.Put("wrong.expect.yaml", Wrong));

        Assert.Equal(1, outcome.Code);
        Assert.Contains(": 0 as expected, ", outcome.Output, StringComparison.Ordinal);
        Snapshot.Match(LastMoment().Replace(_plant.Shown(outcome.Output), "after some time")); // how long a van takes is not what this is about
    }

    [Fact]
    public void A_limit_that_lets_a_fault_through_is_seen()
    {
        var type = Path.Combine(_plant.Root, "vehicle-types", "orrin.yaml");
        File.WriteAllText(type, File.ReadAllText(type).Replace("stop_current: 1.70 .. 2.25 A", "stop_current: 1.10 .. 2.25 A", StringComparison.Ordinal));

        var outcome = Eol.Run("test", _plant.Root, "--name", "dead_brake_lamp", "--name", "good_petrol");

        Assert.Equal(1, outcome.Code);
        Assert.Contains("startup.expect.yaml:35:39: brake_lamps.current: expected fail, found pass", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("2 tests: 1 as expected, 1 otherwise", outcome.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_wrong_with_a_test_is_told_before_anything_runs()
    {
        var path = _plant.Put("odd.expect.yaml", """
            expected-results: odd
            station: startup_1
            order: FV-100231
            tests:
              step: { verdict: pass, steps: { rest.volts: pass } }
              fault: { verdict: pass, faults: [lamp_opn=tail_left] }
              unit: { verdict: pass, steps: { rest.voltage: { is: 1 .. 2 A } } }
            """);

        foreach (var command in new[] { "test", "check" })
        {
            var outcome = Eol.Run(command, path);
            Assert.True(outcome.Code == 2, outcome.ToString());
            Assert.Contains("odd.expect.yaml:5:35: error RES001: the sequence has no 'rest.volts' – did you mean 'rest.voltage'?", outcome.Output, StringComparison.Ordinal);
            Assert.Contains("odd.expect.yaml:6:36: error RES010: there is no fault point 'lamp_opn' – nearest: lamp_open", outcome.Output, StringComparison.Ordinal);
            Assert.Contains("odd.expect.yaml:7:55: error UNT004: A is a unit of current, the value of 'rest.voltage' is in V", outcome.Output, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("no/such.expect.yaml", "FIL001")]
    [InlineData("sequences/demo/startup/startup.yaml", "PLT004")]
    [InlineData("sequences/demo/orders", "there is no file of expected results")]
    [InlineData("sequences/demo --name good_petrl", "did you mean 'good_petrol'?")]
    [InlineData("", "Required argument")]
    public void A_slip_of_the_command_line_ends_with_2(string arguments, string told)
    {
        var outcome = Eol.Run(["test", .. arguments.Split(' ', StringSplitOptions.RemoveEmptyEntries)]);

        Assert.True(outcome.Code == 2, outcome.ToString());
        Assert.Contains(told, outcome.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", outcome.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void An_adapter_that_is_not_there_is_trouble_and_no_failure()
    {
        var station = Path.Combine(_plant.Root, "stations", "startup.yaml");
        File.WriteAllText(station, File.ReadAllText(station).Replace("simulated-sound-meter", "simulated-loudness", StringComparison.Ordinal));

        var outcome = Eol.Run("test", _plant.Root, "--name", "good_petrol");

        Assert.True(outcome.Code == 3, outcome.ToString());
        Assert.Contains("simulated-loudness", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("1 test: 0 as expected, 0 otherwise, 1 not to be run", outcome.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_program_reads_what_came_out_as_json()
    {
        var path = _plant.Put("odd.expect.yaml", "expected-results: odd\nstation: startup_1\norder: FV-100231\nseed: 5\ntests: { t: { verdict: pass, only: [rest], faults: [battery_voltage=12.2], steps: { rest.voltage: pass } } }\n");

        var outcome = Eol.Run("test", path, "--json");

        Assert.Equal(1, outcome.Code);
        var root = JsonDocument.Parse(outcome.Output).RootElement;
        Assert.Equal((0, 1), (root.GetProperty("asExpected").GetInt32(), root.GetProperty("otherwise").GetInt32()));
        var test = root.GetProperty("files")[0].GetProperty("tests")[0];
        Assert.Equal(("t", 5, "fail"), (test.GetProperty("test").GetString(), test.GetProperty("seed").GetInt32(), test.GetProperty("verdict").GetString()));
        Assert.Equal(["verdict: pass, fail at 5:24", "rest.voltage: pass, fail at 5:99"], test.GetProperty("misses").EnumerateArray().Select(miss =>
            $"{miss.GetProperty("of")}: {miss.GetProperty("expected")}, {miss.GetProperty("found")} at {miss.GetProperty("line")}:{miss.GetProperty("column")}"));
    }

    [Fact]
    public void The_record_is_kept_where_it_is_wanted_and_is_the_same_each_time()
    {
        using var first = new Eol();
        using var second = new Eol();
        string[] arguments = ["test", "sequences/demo", "--name", "dead_tail_lamp", "--name", "battery_just_below", "--data"];
        Assert.Equal(0, Eol.Run([.. arguments, first.Data]).Code);
        Assert.Equal(0, Eol.Run([.. arguments, second.Data]).Code);

        Assert.Equal(0, Eol.Run("verify", "--data", first.Data).Code);
        var runs = new[] { first, second }.Select(eol => Eol.Run("show", "startup_1-000002", "--json", "--data", eol.Data).Output).ToList();
        Assert.Contains("battery_voltage=12.395", runs[0], StringComparison.Ordinal);
        Assert.Equal(runs[0], runs[1]);
    }

    [GeneratedRegex(@"after [0-9.]+ s\b")]
    private static partial Regex LastMoment();
}
