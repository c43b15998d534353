using EolSequencer.Model.Ports;
using EolSequencer.Simulators.Time;

namespace EolSequencer.Simulators.Tests.Operators;

/// <summary>A rehearsal is only as honest as its person: slow as people, one pair of hands, eyes that see the fault.</summary>
public sealed class SimulatedOperatorTests
{
    [Fact]
    public void A_door_is_opened_and_closed_after_the_time_a_person_needs()
    {
        var (time, vehicle) = Vans.New();
        Ask(time, vehicle, Prompts.Of("doors.ajar", PromptKind.Act, "side"), 10);
        Assert.False(vehicle.Van.Doors.IsAjar(3));

        (time, vehicle) = Vans.New();
        _ = time.Run(async () =>
        {
            var asking = vehicle.Operator.AskAsync(Prompts.Of("doors.ajar", PromptKind.Act, "side"), default);
            await Task.Delay(TimeSpan.FromMilliseconds(400), time);
            Assert.False(vehicle.Van.Doors.IsAjar(3));
            var opened = TimeSpan.Zero;
            for (var i = 0; i < 200 && !vehicle.Van.Doors.IsAjar(3); i++) await Task.Delay(TimeSpan.FromMilliseconds(20), time);
            opened = time.Now;
            for (var i = 0; i < 200 && vehicle.Van.Doors.IsAjar(3); i++) await Task.Delay(TimeSpan.FromMilliseconds(20), time);
            Assert.InRange(time.Now - opened, TimeSpan.FromSeconds(1.3), TimeSpan.FromSeconds(1.5));
            Assert.False(asking.IsCompleted);
            return 0;
        });
    }

    [Fact]
    public void Prompts_of_one_screen_are_done_one_after_the_other()
    {
        var (time, vehicle) = Vans.New();
        var open = 0;
        var most = 0;
        vehicle.Van.HasChanged += () =>
        {
            open = Enumerable.Range(0, 5).Count(vehicle.Van.Doors.IsAjar);
            most = Math.Max(most, open);
        };
        var opened = new HashSet<int>();
        vehicle.Van.HasChanged += () => opened.UnionWith(Enumerable.Range(0, 5).Where(vehicle.Van.Doors.IsAjar));
        time.Run(async () =>
        {
            foreach (var door in Simulators.Physics.Doors.Names) _ = vehicle.Operator.AskAsync(Prompts.Of("doors.ajar", PromptKind.Act, door, screen: "doors"), default);
            await Task.Delay(TimeSpan.FromSeconds(30), time);
        });
        Assert.Equal(5, opened.Count);
        Assert.Equal(1, most);
    }

    [Fact]
    public void What_is_held_is_let_go_a_moment_after_the_prompt_is_gone()
    {
        var (time, vehicle) = Vans.New();
        vehicle.Van.Ignition.Press();
        using var seen = new CancellationTokenSource();
        time.Run(async () =>
        {
            var asking = vehicle.Operator.AskAsync(Prompts.Of("running.comfort.window_left.travel.down", PromptKind.Act, "left"), seen.Token);
            await Task.Delay(TimeSpan.FromSeconds(3), time);
            Assert.True(vehicle.Van.Windows.IsMotorOn(0, time.Now));
            seen.Cancel();
            await Assert.ThrowsAnyAsync<OperationCanceledException>(() => asking);
            await Task.Delay(TimeSpan.FromMilliseconds(100), time);
            Assert.True(vehicle.Van.Windows.IsMotorOn(0, time.Now));
            await Task.Delay(TimeSpan.FromMilliseconds(700), time);
            Assert.False(vehicle.Van.Windows.IsMotorOn(0, time.Now));
        });
    }

    [Fact]
    public void The_brake_pedal_is_held_until_its_lamps_have_been_looked_at()
    {
        var (time, vehicle) = Vans.New();
        Ask(time, vehicle, Prompts.Of("brake_lamps.pedal", PromptKind.Act), 4);
        Assert.True(vehicle.Van.Brakes.IsPressed);
        Assert.IsType<Answer.Ok>(Ask(time, vehicle, Prompts.Of("brake_lamps.seen", PromptKind.Judge), 10));
        Assert.False(vehicle.Van.Brakes.IsPressed);
    }

    [Fact]
    public void The_foot_leaves_the_pedal_for_whatever_comes_next()
    {
        var (time, vehicle) = Vans.New();
        Ask(time, vehicle, Prompts.Of("brake_lamps.pedal", PromptKind.Act), 4);
        Ask(time, vehicle, Prompts.Of("hazard.pressed", PromptKind.Act), 4);
        Assert.False(vehicle.Van.Brakes.IsPressed);
    }

    [Theory]
    [InlineData("brake_lamps.seen", "lamp_open=stop_high", "high")]
    [InlineData("lights.front", "lamp_open=position_right", "position_right")]
    [InlineData("lights.rear", "lamp_wet=plate", "plate")]
    [InlineData("identity.plates", "plate_differs=stamp", "stamp")]
    [InlineData("hazard.in_step", "lamp_open=turn_rear_left", "rear_left")]
    [InlineData("hazard.in_step", "flash_lag", "front_right")]
    [InlineData("ignition.telltales", "display_row_dark=lower_row", "lower_row")]
    [InlineData("ignition.telltales", "warning_lamp_dead=oil", "lower_row")]
    [InlineData("start.cluster", "warning_lamp_stuck=abs", "upper_row")]
    [InlineData("wipers.spray", "washer_jet_blocked=right", "right")]
    [InlineData("wipers.spray", "switch_dead=washer", "left")]
    [InlineData("cabin.webbing", "belt_jams=passenger", "passenger")]
    [InlineData("reverse.clear_picture", "rear_picture_poor=blurred", "blurred")]
    [InlineData("running.comfort.blower.airflow", "air_duct_blocked=left", "left")]
    [InlineData("running.under_hood.leaks", "leak=brake_fluid", "brake_fluid")]
    [InlineData("running.steering", "steering_notchy", null)]
    [InlineData("running.under_hood.noise", "drive_noise", null)]
    public void A_judgement_follows_what_the_vehicle_shows(string pattern, string fault, string? where)
    {
        Assert.IsType<Answer.Ok>(JudgementOf(pattern));
        Assert.Equal(where, Assert.IsType<Answer.NotOk>(JudgementOf(pattern, fault)).Where);
    }

    [Fact]
    public void A_person_who_misjudges_calls_good_bad_and_bad_good()
    {
        Assert.IsType<Answer.NotOk>(JudgementOf("identity.plates", "misjudges=identity.plates"));
        Assert.IsType<Answer.Ok>(JudgementOf("identity.plates", "misjudges=identity.plates", "plate_differs"));
    }

    [Fact]
    public void Scanning_entering_and_choosing_say_what_is_there()
    {
        var (time, vehicle) = Vans.New("spare_pressure=215", "wrong_rims");
        Assert.Equal(new Answer.Text(Vans.Vin), Ask(time, vehicle, Prompts.Of("identity.label", PromptKind.Scan), 20));
        Assert.Equal(new Answer.Text("steel"), Ask(time, vehicle, Prompts.Of("identity.rims", PromptKind.Choose), 20));
        Assert.Equal(new Answer.Text("215"), Ask(time, vehicle, Prompts.Of("body.spare_wheel", PromptKind.Enter), 20));
    }

    [Fact]
    public void The_other_label_has_another_number()
    {
        var (time, vehicle) = Vans.New("scans_other_label");
        var scanned = Assert.IsType<Answer.Text>(Ask(time, vehicle, Prompts.Of("identity.label", PromptKind.Scan), 20)).Value;
        Assert.NotEqual(Vans.Vin, scanned);
        Assert.Equal(17, scanned.Length);
    }

    [Fact]
    public void Prompts_that_nobody_has_described_do_not_pass_by_themselves()
    {
        var (time, vehicle) = Vans.New();
        Assert.IsType<Answer.Confirmed>(Ask(time, vehicle, Prompts.Of("new.step", PromptKind.Confirm), 10));
        Assert.IsType<Answer.Confirmed>(Ask(time, vehicle, Prompts.Of("new.step", PromptKind.Caution), 10));
        foreach (var kind in new[] { PromptKind.Act, PromptKind.Judge, PromptKind.Enter, PromptKind.Scan, PromptKind.Choose })
        {
            Assert.Null(Ask(time, vehicle, Prompts.Of("new.step", kind), 60));
        }
    }

    [Fact]
    public void A_step_that_did_not_pass_is_tried_again_once()
    {
        var (time, vehicle) = Vans.New();
        Assert.IsType<Answer.Again>(Ask(time, vehicle, Prompts.Of("ignition.key_on", PromptKind.Decide), 10));
        Assert.IsType<Answer.GoOn>(Ask(time, vehicle, Prompts.Of("ignition.key_on", PromptKind.Decide), 10));
        Assert.IsType<Answer.Again>(Ask(time, vehicle, Prompts.Of("hazard.pressed", PromptKind.Decide), 10));
    }

    [Fact]
    public void Walking_to_another_place_takes_seconds()
    {
        Assert.InRange(SecondsFor("driver_seat", "driver_seat"), 0.5, 3);
        Assert.InRange(SecondsFor("driver_seat", "rear"), 2.5, 9);

        static double SecondsFor(string first, string second)
        {
            var (time, vehicle) = Vans.New();
            Ask(time, vehicle, Prompts.Of("new.step", PromptKind.Confirm, place: first), 20);
            var start = time.Now;
            Ask(time, vehicle, Prompts.Of("new.step", PromptKind.Confirm, place: second), 20);
            return (time.Now - start).TotalSeconds;
        }
    }

    [Fact]
    public void A_person_who_has_left_answers_nothing()
    {
        var (time, vehicle) = Vans.New("operator_leaves");
        Assert.Null(Ask(time, vehicle, Prompts.Of("identity.plates", PromptKind.Judge), 60));
    }

    [Fact]
    public void A_withdrawn_prompt_keeps_nobody_busy()
    {
        var (time, vehicle) = Vans.New();
        Assert.Null(Ask(time, vehicle, Prompts.Of("identity.plates", PromptKind.Judge), 0.1));
        Assert.IsType<Answer.Ok>(Ask(time, vehicle, Prompts.Of("identity.plates", PromptKind.Judge), 10));
    }

    private static Answer? JudgementOf(string pattern, params string[] faults)
    {
        var (time, vehicle) = Vans.New(faults);
        var van = vehicle.Van;
        switch (pattern)
        {
            case "brake_lamps.seen":
                van.Brakes.Press(true);
                break;
            case "hazard.in_step":
                van.Switches.Hazard(true);
                break;
            case "lights.front" or "lights.rear":
                van.Ignition.Press();
                van.Switches.Light(park: false, low: true, high: false);
                break;
            case "ignition.telltales":
                van.Ignition.Press();
                break;
            case "start.cluster":
                van.Ignition.Press();
                van.Restraint.Buckle(0, true);
                van.Brakes.Press(true);
                time.Advance(TimeSpan.FromSeconds(8));
                van.Ignition.Press();
                time.Advance(TimeSpan.FromSeconds(8));
                break;
            case "reverse.clear_picture":
                van.Ignition.Press();
                van.Brakes.Press(true);
                van.Selector.Select(Simulators.Physics.Selector.Reverse);
                time.Advance(TimeSpan.FromSeconds(4));
                break;
        }

        return Ask(time, vehicle, Prompts.Of(pattern, PromptKind.Judge), 20);
    }

    private static Answer? Ask(VirtualTime time, SimulatedVehicle vehicle, Prompt prompt, double withinSeconds) => time.Run(async () =>
    {
        using var limit = new CancellationTokenSource(TimeSpan.FromSeconds(withinSeconds), time);
        try
        {
            return (Answer?)await vehicle.Operator.AskAsync(prompt, limit.Token);
        }
        catch (OperationCanceledException)
        {
            return null;
        }
    });
}
