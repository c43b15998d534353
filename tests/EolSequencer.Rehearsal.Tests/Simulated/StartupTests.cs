using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Rehearsal.Tests.Kit;

namespace EolSequencer.Rehearsal.Tests.Simulated;

/// <summary>The main job on simulated vehicles: good ones pass in time, and a fault is caught by the step that is there for it.</summary>
public class StartupTests
{
    public static TheoryData<int> Orders => [.. Enumerable.Range(0, DemoPlant.Orders.Count)];

    [Fact]
    public void The_demo_plant_loads_without_a_finding() => Assert.Empty(DemoPlant.Startup.Diagnostics);

    [Theory]
    [MemberData(nameof(Orders))]
    public void A_good_vehicle_passes_with_each_of_five_seeds(int order)
    {
        for (ulong seed = 1; seed <= 5; seed++)
        {
            var run = DemoPlant.Rehearse(DemoPlant.Orders[order], seed);
            Assert.Empty(run.Results.Where(result => result.Counted > Verdict.Pass).Select(result => $"seed {seed}: {result.Step} {result.Detail}"));
            Assert.Equal(Verdict.Pass, run.Ended!.RollUp.Verdict);
            Assert.True(run.Results.Count(result => result.Measured != Verdict.None) >= 190);
        }
    }

    [Fact]
    public void At_most_sixty_steps_want_a_person_and_95_of_100_runs_stay_within_the_cycle_time()
    {
        var runs = Enumerable.Range(0, 40).Select(number => DemoPlant.Rehearse(DemoPlant.Orders[number % DemoPlant.Orders.Count], (ulong)(100 + number))).ToList();
        var times = runs.Select(run => run.At).Order().ToList();
        Assert.True(times[(int)Math.Ceiling(0.95 * times.Count) - 1] <= DemoPlant.Startup.Sequence!.CycleTime);

        var counting = new PromptCount();
        DemoPlant.Rehearse(DemoPlant.Orders[1], 1, counting, null);
        Assert.InRange(counting.Steps.Count, 30, 60);
    }

    [Theory]
    [InlineData(0, "lamp_open=tail_left", "lights.rear")]
    [InlineData(0, "lamp_open=low_left", "lights.current")]
    [InlineData(0, "battery_voltage=12.2", "rest.voltage")]
    [InlineData(0, "pedal_sinks", "brake_lamps.sink")]
    [InlineData(0, "horn_open", "horn.current")]
    [InlineData(0, "brake_switch_open", "brake_lamps.pedal")]
    [InlineData(0, "trouble_code=brakes", "trouble_codes.stored")]
    public void A_fault_is_caught_by_the_step_that_is_there_for_it(int order, string fault, string step)
    {
        var run = DemoPlant.Rehearse(DemoPlant.Orders[order], 1, fault);
        var failed = run.Results.Where(result => result.Counted == Verdict.Fail).Select(result => result.Step).ToList();
        Assert.True(failed.Contains(step), $"{fault}: {string.Join(", ", failed)}");
        Assert.False(run.Ended!.RollUp.Releases);
    }

    [Fact]
    public void A_dead_control_unit_on_a_healthy_bus_is_the_vehicles_fault_and_a_dead_bus_is_not()
    {
        Assert.Equal(Verdict.Fail, Worst(DemoPlant.Rehearse(DemoPlant.Orders[0], 1, "unit_silent=camera"), "control_units[camera].software"));
        Assert.Equal(Verdict.Error, DemoPlant.Rehearse(DemoPlant.Orders[0], 1, "bus_silent@120s").Ended!.RollUp.Verdict);
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(0, 7)]
    [InlineData(1, 20)]
    [InlineData(2, 60)]
    [InlineData(2, 120)]
    [InlineData(3, 150)]
    [InlineData(4, 170)]
    public void A_bus_that_falls_silent_ends_the_run_within_seconds_as_an_error_and_leaves_the_vehicle_safe(int order, int second)
    {
        var run = DemoPlant.Rehearse(DemoPlant.Orders[order], 1, $"bus_silent@{second}s");
        Assert.Equal(Verdict.Error, run.Ended!.RollUp.Verdict);
        Assert.Equal(0, run.Ended.RollUp.Fail);
        Assert.False(run.Ended.Interrupted);
        Assert.InRange(run.At, TimeSpan.FromSeconds(second), TimeSpan.FromSeconds(second + 10));
        Assert.Contains(run.Stopped!.Reason, new[]
        {
            "'coding.write_vin' did not pass, which stops the run",
            "lost: bus.gateway_awake (frame 3D0 has not come for 3 cycles of 200 ms)",
            "lost: bus.selector[\"park\"] (frame 1C0 has not come for 3 cycles of 20 ms)",
        });
        Assert.Equal(["outputs_back", "session_end"], run.Results.Select(result => result.Step).Where(step => step is "outputs_back" or "session_end"));
    }

    [Fact]
    public void A_dead_gateway_stops_the_run_as_the_vehicles_fault()
    {
        var run = DemoPlant.Rehearse(DemoPlant.Orders[0], 1, "unit_silent=gateway");
        Assert.Equal(Verdict.Fail, Worst(run, "coding.write_vin"));
        Assert.InRange(run.At, TimeSpan.Zero, TimeSpan.FromSeconds(20));
    }

    private static Verdict? Worst(RunFold run, string step) => run.Results.FirstOrDefault(result => result.Step == step)?.Counted;

    private sealed class PromptCount : Model.Ports.IRunJournal
    {
        public HashSet<string> Steps { get; } = [];

        public void Append(RunEvent next)
        {
            if (next is Asked { Kind: not Model.Ports.PromptKind.Caution } asked) Steps.Add(asked.Step);
        }
    }
}
