using System.Collections.Frozen;
using System.Globalization;
using EolSequencer.Model.Ports;
using EolSequencer.Simulators.Physics;

namespace EolSequencer.Simulators.Operators;

/// <summary>What a person does or looks at, step by step of the demo plant's start-up sequence.</summary>
internal static class StartUpPlans
{
    private static readonly TimeSpan Tap = TimeSpan.FromMilliseconds(350);
    private static readonly TimeSpan Notch = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan Swing = TimeSpan.FromMilliseconds(1400);

    private static readonly FrozenDictionary<string, Plan> ByPattern = new Dictionary<string, Plan>
    {
        // at the front left door
        ["identity.label"] = new Plan.Say(errand => Label(errand)),
        ["identity.plates"] = new Plan.Look(van => Where(van.Impressions.PlateDiffers)),
        ["identity.rims"] = new Plan.Say(errand => errand.Van.Wheels.HasAlloyRims ? "alloy" : "steel"),

        // around the vehicle
        ["doors.ajar"] = Do(errand =>
        {
            var door = IndexOf(Doors.Names, errand.Value("door"));
            errand.Van.Doors.Move(door, open: true);
            errand.Then(Swing, () => errand.Van.Doors.Move(door, open: false));
        }),
        ["body.hood"] = Do(errand =>
        {
            errand.Van.Doors.MoveHood(open: true);
            errand.Then(Swing, () => errand.Van.Doors.MoveHood(open: false));
        }),
        ["body.spare_wheel"] = new Plan.Say(errand => Math.Round(errand.Van.Wheels.SparePressure).ToString(CultureInfo.InvariantCulture)),
        ["body.all_closed"] = Do(errand => errand.Van.Doors.CloseAll()),
        ["body.locking"] = Do(errand => errand.Van.Doors.Lock(true)),
        ["body.unlocking"] = Do(errand => errand.Van.Doors.Lock(false)),

        // driver's seat: hazard, ignition, lights
        ["hazard.pressed"] = Do(errand => errand.Van.Switches.Hazard(true)),
        ["hazard.in_step"] = new Plan.Look(OperatorEyes.HazardLamps),
        ["hazard.released"] = Do(errand => errand.Van.Switches.Hazard(false)),
        ["ignition.key_on"] = Do(PressStart),
        ["ignition.telltales"] = new Plan.Look(OperatorEyes.LampCheck),
        ["lights.low_beam"] = Do(errand => errand.Van.Switches.Light(park: false, low: true, high: false)),
        ["lights.front"] = new Plan.Look(van => OperatorEyes.Dark(van, "low_left", "low_right", "position_left", "position_right")),
        ["lights.rear"] = new Plan.Look(van => OperatorEyes.Dark(van, "tail_left", "tail_right", "plate")),
        ["lights.leveller_down"] = Do(errand => errand.Van.Leveller.Turn(100)),
        ["lights.high_beam"] = Do(errand => errand.Van.Switches.Light(park: false, low: true, high: true)),
        ["lights.lights_off"] = Do(errand =>
        {
            errand.Van.Leveller.Turn(0);
            errand.Then(Tap, () => errand.Van.Switches.Light(park: false, low: false, high: false));
        }),
        ["brake_lamps.pedal"] = Do(HoldPedal),
        ["brake_lamps.seen"] = new Plan.Look(van => OperatorEyes.Dark(van, "stop_left", "stop_right", "stop_high")) { ThenLetsGo = true },

        // driver's seat: stalks
        ["signals.left.first_light"] = Do(Stalk),
        ["signals.right.first_light"] = Do(Stalk),
        ["signals.stalk_back"] = Do(errand => errand.Van.Switches.Stalk(Switches.Middle)),
        ["horn.button"] = Do(errand =>
        {
            errand.Van.Switches.PressHorn(true);
            errand.Then(Tap, () => errand.Van.Switches.PressHorn(false));
        }),
        ["wipers.slow.chosen"] = Do(errand => errand.Van.Switches.Wipe(0)),
        ["wipers.fast.chosen"] = Do(errand => errand.Van.Switches.Wipe(1)),
        ["wipers.spray"] = new Plan.Look(OperatorEyes.Spray)
        {
            First = errand =>
            {
                errand.Van.Switches.PullWasher(true);
                errand.Then(Tap * 2, () => errand.Van.Switches.PullWasher(false));
            },
        },
        ["wipers.switched_off"] = Do(errand => errand.Van.Switches.Wipe(Switches.Middle)),
        ["wipers.parked"] = new Plan.Look(van => van.Wipers.ParksHigh ? "left" : null),

        // driver's seat: cabin
        ["cabin.seat"] = Do(errand =>
        {
            errand.Van.Seat.Drive(forward: true);
            errand.HoldUntilSeen(errand.Van.Seat.Release);
        }),
        ["cabin.belts.buckled"] = Do(errand => errand.Van.Restraint.Buckle(IndexOf(Restraint.Seats, errand.Value("seat")), true)),
        ["cabin.webbing"] = new Plan.Look(van => OperatorEyes.First(van.Restraint.JammedBelts, Restraint.Seats)),
        ["cabin.park_brake_released"] = Do(errand => errand.Van.Brakes.SetParkingBrake(false)),
        ["cabin.park_brake_applied"] = Do(errand => errand.Van.Brakes.SetParkingBrake(true)),

        // driver's seat: reverse and start
        ["reverse.selected"] = Do(errand =>
        {
            errand.Van.Brakes.Press(true);
            errand.Then(Tap * 2, () => errand.Van.Selector.Select(Selector.Reverse));
            errand.KeepHolding(() => errand.Van.Brakes.Press(false));
        }),
        ["reverse.clear_picture"] = new Plan.Look(van => van.Selector.ShowsPicture(van.Now) ? Where(van.Selector.PictureFault) : "dark"),
        ["reverse.park"] = Do(errand =>
        {
            errand.Van.Selector.Select(Selector.Neutral);
            errand.Then(Notch, () => errand.Van.Selector.Select(Selector.Drive));
            errand.Then(Notch, () => errand.Van.Selector.Select(Selector.Park));
        }),
        ["start.refused"] = Do(PressStart),
        ["start.engine.start_time"] = Do(StartDrive),
        ["start.drive.ready"] = Do(StartDrive),
        ["start.cluster"] = new Plan.Look(OperatorEyes.LampsLeft),

        // running
        ["running.comfort.cooling_on"] = Do(errand =>
        {
            if (!errand.Van.Climate.IsCompressorOn) errand.Van.Climate.PressCooling();
        }),
        ["running.comfort.heater_on"] = Do(errand =>
        {
            if (!errand.Van.Climate.IsHeaterOn) errand.Van.Climate.PressHeater();
        }),
        ["running.comfort.blower.airflow"] = new Plan.Look(van => OperatorEyes.Side(van.Climate.BlockedDucts)),
        ["running.comfort.window_left.travel.down"] = Do(errand => Window(errand, up: false)),
        ["running.comfort.window_left.travel.up"] = Do(errand => Window(errand, up: true)),
        ["running.comfort.window_right.travel.down"] = Do(errand => Window(errand, up: false)),
        ["running.comfort.window_right.travel.up"] = Do(errand => Window(errand, up: true)),
        ["running.steering"] = new Plan.Look(van => van.Impressions.SteeringIsNotchy ? "" : null),
        ["running.under_hood.noise"] = new Plan.Look(van => van.Impressions.DriveIsNoisy ? "" : null),
        ["running.under_hood.leaks"] = new Plan.Look(van => Where(van.Impressions.Leak)),
        ["trailer.plugged"] = Do(errand => errand.Van.Trailer.Plug(true)),
        ["trailer.unplugged"] = Do(errand => errand.Van.Trailer.Plug(false)),
        ["trouble_codes.switched_off"] = Do(errand => errand.Van.Ignition.SwitchOff()),
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>The steps that have a plan.</summary>
    public static IEnumerable<string> Patterns => ByPattern.Keys;

    /// <summary>The plan of a prompt; null when there is none, and for cautions and decisions about a step.</summary>
    public static Plan? Find(Prompt prompt) =>
        prompt.Kind is PromptKind.Caution or PromptKind.Decide ? null : ByPattern.GetValueOrDefault(prompt.StepPattern);

    private static Plan.Do Do(Action<Errand> act) => new(act);

    private static string? Where(string place) => place.Length > 0 ? place : null;

    private static int IndexOf(IReadOnlyList<string> names, string name)
    {
        for (var i = 0; i < names.Count; i++)
        {
            if (names[i] == name) return i;
        }

        throw new InvalidOperationException($"the vehicle has no '{name}' among {string.Join(", ", names)}");
    }

    // The other label: two digits of the running number stand the other way round, and the check digit with them is wrong.
    private static string Label(Errand errand)
    {
        var vin = errand.Facts.Vin;
        return errand.Habits.ScansOtherLabel ? string.Concat(vin.AsSpan(0, 16), vin[16] == '9' ? "0" : "9") : vin;
    }

    private static void PressStart(Errand errand)
    {
        errand.Van.Ignition.Press();
        errand.Then(Tap, errand.Van.Ignition.Release);
    }

    private static void StartDrive(Errand errand)
    {
        errand.Van.Brakes.Press(true);
        errand.Then(Tap, errand.Van.Ignition.Press);
        errand.Then(Tap, errand.Van.Ignition.Release);
        errand.HoldUntilSeen(() => errand.Van.Brakes.Press(false));
    }

    private static void HoldPedal(Errand errand)
    {
        // A foot that still stands there has just come off; the switch is seen open before the pedal goes down again.
        errand.Then(Tap, () => errand.Van.Brakes.Press(true));
        errand.KeepHolding(() => errand.Van.Brakes.Press(false));
        if (!errand.Habits.LetsGoOfPedal) return;
        errand.Habits.LetsGoOfPedal = false;
        errand.Then(Tap / 2, () => errand.Van.Brakes.Press(false));
    }

    private static void Stalk(Errand errand) => errand.Van.Switches.Stalk(errand.Side("side"));

    private static void Window(Errand errand, bool up)
    {
        var side = errand.Side("side");
        errand.Van.Windows.Drive(side, up);
        errand.HoldUntilSeen(() => errand.Van.Windows.Release(side));
    }
}
