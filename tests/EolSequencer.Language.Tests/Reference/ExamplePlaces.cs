namespace EolSequencer.Language.Tests.Reference;

/// <summary>The places that the tables of keys are about, each by the heading of its table.</summary>
internal static class ExamplePlaces
{
    private const string Type = """
        vehicle-type: odd
        options: { drive: { one-of: [fwd, awd] }, powertrain: { one-of: [petrol, electric] }, tow: { as: yes-no } }
        ecus:
          gateway: { can: { request: 0x700, response: 0x708 } }
          brakes: { can: { request: 0x713, response: 0x71B } }
          door_left: { can: { request: 0x720, response: 0x728 } }
          door_right: { can: { request: 0x721, response: 0x729 } }

        """;

    private const string Tests = "expected-results: odd\ntests:\n  one:\n    ";

    private static readonly Dictionary<string, ExamplePlace> Known = new(StringComparer.Ordinal)
    {
        ["plant"] = new("§\n", "plant: odd\nzone: UTC\nroute: [startup]"),
        ["vehicle-type"] = new(
            "§\n",
            "vehicle-type: odd\noptions: { drive: { one-of: [fwd, awd] }, powertrain: { one-of: [petrol, electric] }, tow: { as: yes-no } }\necus: { gateway: { can: { request: 0x710, response: 0x718 } } }"),
        ["ecus"] = new(Type + "  one:\n    §\n", "can: { request: 0x722, response: 0x72A }\nwhen: vehicle.tow"),
        ["channels of the vehicle bus"] = new(Type + "channels:\n  one:\n    §\n", ""),
        ["channels of the vehicle bus 2"] = new(
            Type + "channels:\n  one:\n    §\n",
            "from: gateway\ndata: 0x2104\nas: uint16\nscale: 1 °C",
            "from: gateway\ndata: 0x2104\nas: yes-no",
            "from: gateway\ndata: 0x2104\nas: text(8)",
            "from: ecus\ndata: 0x2104\nas: text(8)",
            "from: ecus\nservice: stored-trouble-codes\nmask: confirmed\nas: list",
            "frame: 0x1A0\nbits: 0+16\ncycle: 100 ms"),
        ["actions of the vehicle bus"] = new(Type + "actions:\n  one:\n    §\n", "from: gateway\ncontrol: 0x2220\nto: yes-no"),
        ["actions of the vehicle bus 2"] = new(
            Type + "actions:\n  one:\n    §\n",
            "from: gateway\ncontrol: 0x2220\nto: yes-no",
            "from: brakes\nroutine: 0x0301",
            "from: ecus\nroutine: 0x0301",
            "from: gateway\nwrite: 0xF190\nto: text(17)"),
        ["device-kind"] = new("§\n", "device-kind: odd\nchannels: { level: { as: number, unit: V } }"),
        ["device-kind … channels"] = new("device-kind: odd\nchannels:\n  one:\n    §\n", "as: number\nunit: V"),
        ["device-kind … actions"] = new("device-kind: odd\nactions:\n  one:\n    §\n", "repeatable: true", "to: yes-no"),
        ["station"] = new("§\n", "station: odd\nstation-kind: startup\ndata: ../../../eol-data\ndevices: { meter: { adapter: simulated-meter } }"),
        ["station … devices"] = new(
            "station: odd\nstation-kind: startup\ndata: ../../../eol-data\ndevices:\n  bus: { adapter: simulated-vehicle }\n  meter:\n    §\n",
            "adapter: simulated-meter"),
        ["order"] = new(
            "§\n",
            "order: odd\nvin: GFVRRNFP7VF100231\nvehicle-type: small\noptions: { rims: steel, powertrain: petrol }\nfacts: { coding: FPSPSN01 }",
            ReferenceText.Block(ReferenceText.BlockLines.Single(line => ReferenceText.Block(line).StartsWith("order:", StringComparison.Ordinal))).TrimEnd()),
        ["operator-script"] = new("§\n", "operator-script: odd\nanswers: { seen: ok }"),
        ["expected-results"] = new("§\n", "expected-results: odd\nstation: startup_1\norder: FV-100231\ntests: { one: { verdict: pass } }"),
        ["expected-results 2"] = new(Tests + "§\n", "station: startup_1\norder: FV-100231\nverdict: pass", "station: startup_1\nverdict: pass", "station: startup_1\norder: FV-100231\nverdict: fail\nothers: any"),
        ["expected-results 3"] = new(Tests + "station: startup_1\n    order: FV-100231\n    verdict: error\n    others: any\n    steps:\n      rest.voltage:\n        §\n", "verdict: pass", "verdict: error"),
        ["sequence"] = new(
            "§\n",
            """
            sequence: odd
            revision: 1
            vehicle-type: orrin
            station-kind: startup
            devices: { bus: vehicle-bus, meter: dc-meter, line: line-signal }
            parameters: { door: { one-of: [front, rear], default: rear } }
            steps: [ { step: rest, read: meter.battery_voltage, expect: 12 .. 13 V } ]
            """),
        ["Keys of every step"] = Steps(
            "step: odd\njudge: It is dry.",
            "step: odd\nread: meter.lamp_current\nexpect: 1 .. 2 A\nuncertainty: 0.1 A",
            "step: odd\nread: bus.lamp_feed\nexpect: 1 .. 2 A",
            "step: odd\nask: Press the pedal.\nuntil: bus.hazard_switch",
            "step: odd\nwhen: vehicle.powertrain == \"petrol\"\nask: Press start.\nuntil: bus.engine_running\ntakes: .. 5 s"),
        ["Keys of single actions"] = Steps(
            "step: odd\nask: Press the pedal.",
            "step: odd\nenter: Read the gauge.",
            "step: odd\nenter: Read the gauge.\nas: number",
            "step: odd\nscan: Scan the label.\nrecord: serial",
            "step: odd\nchoose: Which one?\namong: [left, right]",
            "step: odd\nsample: meter.lamp_current\nfor: 2 s\nevery: 100 ms\nreduce: max\nexpect: 1 .. 2 A",
            "step: odd\nset: bus.blower\nto: 10 %\ncaution: The blower starts.",
            "step: odd\nset: bus.write_coding\nto: FPSPSN01",
            "step: odd\ndo: noise.start\nwith: { time: 1 s }",
            "step: odd\ncompute: 20 + 0.5\nunit: V"),
        ["Groups"] = Steps("group: odd\nsteps: [ { step: dry, judge: It is dry. } ]", "group: odd"),
        ["Groups … capture"] = new(Steps().Frame.Replace("§", "group: odd\n    capture:\n      §\n    steps: [ { step: pause, wait: 1 s } ]", StringComparison.Ordinal), "channels: [bus.gear]"),
        ["fragment"] = new(
            "§\n",
            "fragment: odd\ndevices: { bus: vehicle-bus }\nparameters: { side: { one-of: [left, right] } }\nsteps: [ { step: dry, judge: It is dry. } ]"),
    };

    /// <summary>A vehicle type with which an order is short.</summary>
    public const string SmallType = """
        vehicle-type: small
        options: { rims: { one-of: [steel, alloy] }, powertrain: { one-of: [petrol, electric] } }
        order: { coding: { as: text(8) } }
        ecus: { gateway: { can: { request: 0x710, response: 0x718 } } }

        """;

    public static IEnumerable<string> All => Known.Keys;

    public static ExamplePlace Of(string place) => Known[place];

    private static ExamplePlace Steps(params string[] bases) => new(
        ReferenceText.StepsOfDemo.Replace("steps:\n", "parameters: { cooling_time: { as: time, default: 20 s } }\nsteps:\n", StringComparison.Ordinal)
        + "  - { step: shop, read: bus.ambient, expect: 15 .. 32 °C }\n  - §\n",
        bases);
}
