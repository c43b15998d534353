using System.Globalization;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Values;
using EolSequencer.Simulators.ControlUnits;
using EolSequencer.Simulators.Faults;
using EolSequencer.Simulators.Physics;
using EolSequencer.Simulators.Tests.ControlUnits;
using EolSequencer.Simulators.Tests.Operators;
using EolSequencer.Simulators.Time;
using EolSequencer.Wire.Can;

namespace EolSequencer.Simulators.Tests;

/// <summary>
/// Everything that can be asked of one vehicle, in the order of a start-up: what a fault changes must show somewhere in
/// the written log.
/// </summary>
internal sealed partial class Examination : ICanListener
{
    private static readonly CanFrame KeepAlive = CanFrame.Parse("7DF#023E800000000000");

    private readonly VirtualTime _time = new(DateTimeOffset.UnixEpoch);
    private readonly SimulatedVehicle _vehicle;
    private readonly Dictionary<string, ScriptedTester> _testers = [];
    private readonly List<string> _log = [];
    private IReadOnlyList<string>? _good;
    private readonly IDevice _meter;
    private readonly IDevice _noise;

    private Examination(Dictionary<string, string> options, ulong seed, IEnumerable<InjectedFault> faults)
    {
        _vehicle = new SimulatedVehicle(Vans.Facts(options), _time, seed, faults);
        _meter = _vehicle.CreateCurrentMeter("meter", null);
        _noise = _vehicle.CreateSoundMeter("noise", null);
        foreach (var type in UnitTypes.All)
        {
            foreach (var frame in type.Frames) _vehicle.Port.Listen(CanId.Base(frame.Id), this, Repeats.MayBeSkipped);
        }

        _time.CreateTimer(_ => _ = _vehicle.Port.SendAsync(KeepAlive, default), null, TimeSpan.FromSeconds(2), TimeSpan.FromSeconds(2));
        foreach (var unit in _vehicle.Network.Units) _testers[unit.Name] = new ScriptedTester(_time, _vehicle.Port, unit.Type.Request, unit.Type.Response);
    }

    /// <summary>All that a vehicle says.</summary>
    public static IReadOnlyList<string> Of(Dictionary<string, string> options, ulong seed, params IEnumerable<InjectedFault> faults)
    {
        var examination = new Examination(options, seed, faults);
        examination.Run(options["powertrain"] == "electric", options["tow"] == "yes", options["doors"] == "double");
        return examination._log;
    }

    /// <summary>Whether a vehicle with a fault says anything else than the good one; stops at the first word.</summary>
    public static bool Shows(InjectedFault fault, Dictionary<string, string> options, ulong seed, IReadOnlyList<string> good)
    {
        try
        {
            var examination = new Examination(options, seed, [fault]) { _good = good };
            examination.Run(options["powertrain"] == "electric", options["tow"] == "yes", options["doors"] == "double");
            return examination._log.Count != good.Count;
        }
        catch (OtherWord)
        {
            return true;
        }
    }

    public void Received(in CanFrame frame, long stamp) => Note($"{frame}");

    public void Silenced(CanId id, long lastStamp) => Note($"{id} is silent");

    private void Run(bool isElectric, bool hasTow, bool hasTwoRearDoors)
    {
        ReadAll();
        AskUnits("1003");
        Act(_meter, "zero");
        Measure("battery_voltage", "lamp_current");
        Prompt("identity.label", PromptKind.Scan);
        Prompt("identity.plates", PromptKind.Judge);
        Prompt("identity.rims", PromptKind.Choose);
        WriteGateway();
        AskUnits("1101");
        _time.Advance(TimeSpan.FromSeconds(5));
        AskUnits("3E00");
        _time.Advance(TimeSpan.FromSeconds(9));
        AskUnits("1003");
        ReadAll();
        foreach (var door in (string[])["front_left", "front_right", "side", "rear", .. hasTwoRearDoors ? ["rear_second"] : Array.Empty<string>()]) Prompt("doors.ajar", PromptKind.Act, door);
        Prompt("body.hood", PromptKind.Act);
        Prompt("body.spare_wheel", PromptKind.Enter);
        Prompts("body.all_closed", "body.locking", "body.unlocking", "hazard.pressed");
        Prompt("hazard.in_step", PromptKind.Judge);
        Prompts("hazard.released", "ignition.key_on");
        Prompt("ignition.telltales", PromptKind.Judge);
        _time.Advance(TimeSpan.FromSeconds(10));
        ReadAll();
        for (var lamp = 0; lamp < 18; lamp++)
        {
            Ask("gateway", $"2F{0x2210 + lamp:X4}0301");
            Measure("lamp_current");
            Ask("gateway", $"2F{0x2210 + lamp:X4}00");
        }

        Prompt("lights.low_beam", PromptKind.Act);
        Measure("lamp_current");
        Ask("gateway", "222104");
        Prompt("lights.front", PromptKind.Judge);
        Prompt("lights.rear", PromptKind.Judge);
        Prompts("lights.leveller_down", "lights.high_beam", "lights.lights_off", "brake_lamps.pedal");
        Measure("lamp_current");
        Prompt("brake_lamps.seen", PromptKind.Judge);
        Prompt("signals.left.first_light", PromptKind.Act, "left");
        Prompt("signals.right.first_light", PromptKind.Act, "right");
        Prompt("signals.stalk_back", PromptKind.Act);
        Ask("gateway", "2F22010301");
        Measure("horn_current");
        MeasureSound();
        Ask("gateway", "2F220100");
        Prompts("horn.button", "wipers.slow.chosen", "wipers.fast.chosen");
        Prompt("wipers.spray", PromptKind.Judge);
        Prompt("wipers.switched_off", PromptKind.Act);
        Prompt("wipers.parked", PromptKind.Judge);
        Prompt("cabin.seat", PromptKind.Act);
        Prompt("cabin.belts.buckled", PromptKind.Act, "driver");
        Prompt("cabin.belts.buckled", PromptKind.Act, "passenger");
        Prompt("cabin.webbing", PromptKind.Judge);
        Prompts("cabin.park_brake_released", "cabin.park_brake_applied");
        for (var axis = 0; axis < 4; axis++) Ask("gateway", $"2F{0x2240 + axis:X4}03A0");
        for (var flap = 0; flap < 3; flap++) Ask("climate", $"2F{0x2251 + flap:X4}03C8");
        Ask("climate", "2F225403C8");
        Ask("brakes", "31010301");
        _time.Advance(TimeSpan.FromSeconds(5));
        Ask("brakes", "31030301");
        Prompt("reverse.selected", PromptKind.Act);
        _time.Advance(TimeSpan.FromSeconds(1));
        Measure("lamp_current");
        Prompt("reverse.clear_picture", PromptKind.Judge);
        Select(Selector.Neutral);
        Select(Selector.Drive);
        Prompts("reverse.park", "start.refused");
        _time.Run(async () =>
        {
            var sampling = SampleSupply();
            await AskAsync(isElectric ? "start.drive.ready" : "start.engine.start_time", PromptKind.Act, null, TimeSpan.FromSeconds(5));
            await sampling;
        });
        Prompt("start.cluster", PromptKind.Judge);
        Prompts("running.comfort.cooling_on", "running.comfort.heater_on");
        Ask("climate", "2F22500364");
        _time.Advance(TimeSpan.FromSeconds(1));
        Measure("heater_current", "blower_current", "ground_drop", "battery_voltage", "battery_ripple");
        Prompt("running.comfort.blower.airflow", PromptKind.Judge);
        foreach (var side in (string[])["left", "right"])
        {
            Prompt($"running.comfort.window_{side}.travel.down", PromptKind.Act, side, TimeSpan.FromSeconds(9));
            Prompt($"running.comfort.window_{side}.travel.up", PromptKind.Act, side, TimeSpan.FromSeconds(9));
        }

        Prompt("running.steering", PromptKind.Judge);
        Prompt("running.under_hood.noise", PromptKind.Judge);
        Prompt("running.under_hood.leaks", PromptKind.Judge);
        _time.Advance(TimeSpan.FromSeconds(20));
        ReadAll();
        if (!isElectric) foreach (var id in (string[])["06", "0B", "0C", "0F", "11", "42"]) Ask("powertrain", "01" + id);
        if (hasTow)
        {
            Prompt("trailer.plugged", PromptKind.Act);
            Ask("tow", "2F22800301");
            _time.Advance(TimeSpan.FromMilliseconds(300));
            Ask("tow", "222180");
            Ask("tow", "2F228000");
            Prompt("trailer.unplugged", PromptKind.Act);
        }

        Ask("climate", "2F225000");
        AskUnits("190208");
        AskUnits("14FFFFFF");
        Prompt("trouble_codes.switched_off", PromptKind.Act);
        AskUnits("190208");
        var line = _vehicle.CreateLineSignal("line", null);
        Act(line, "tell");
        _time.Advance(TimeSpan.FromSeconds(1));
        Note($"accepted: {_time.Run(() => line.ReadAsync(new ReadRequest(new ChannelDescription { Name = "accepted", Shape = ValueShape.Truth }, null, 0), default).AsTask()).Value}");
    }
}
