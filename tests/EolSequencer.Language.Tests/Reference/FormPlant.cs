namespace EolSequencer.Language.Tests.Reference;

/// <summary>A small plant that has every name which the tables of expectations and expressions use.</summary>
internal static class FormPlant
{
    /// <summary>In an end, what stands in place of an example.</summary>
    public const string Mark = "§";

    /// <summary>The files beside the sequence.</summary>
    public static readonly IReadOnlyDictionary<string, string> Files = new Dictionary<string, string>
    {
        ["plant.yaml"] = "plant: odd\nzone: UTC\nroute: [startup]\n",
        ["small.yaml"] = """
            vehicle-type: small
            options: { rims: { one-of: [steel, alloy] } }
            order: { software: { by: ecus, as: text(12) } }
            limits: { lamp_current: { low: 1 .. 2 A, high: 2 .. 4 A } }
            ecus:
              gateway: { can: { request: 0x710, response: 0x718 } }
              front: { can: { request: 0x720, response: 0x728 } }
              rear: { can: { request: 0x721, response: 0x729 } }
            channels:
              door_ajar: { from: ecus, data: 0x2104, as: yes-no, by: [front, rear] }
              wiper_parked: { from: gateway, data: 0x2105, as: yes-no }
              engine_speed: { from: gateway, data: 0x2106, as: uint16, scale: 1 rpm }

            """,
        ["bench.yaml"] = """
            device-kind: bench
            channels:
              speed: { as: number, unit: km/h }
              engine_speed: { as: number, unit: rpm }
              current: { as: number, unit: A }
              voltage: { as: number, unit: V }
              power: { as: number, unit: W }
              force: { as: number, unit: N, by: [fl, fr] }
              gap: { as: number, unit: mm }
              coolant: { as: number, unit: °C }
              gear: { as: number }
              part: { as: text }
              codes: { as: list }
              brake_switch: { as: yes-no }
              wiper_parked: { as: yes-no }
              turn_lamp: { as: yes-no, by: [left, right] }
              window_motor: { as: yes-no, by: [left, right] }

            """,
    };

    /// <summary>The sequence up to the step that is tried.</summary>
    public const string Sequence = """
        sequence: odd
        revision: 1
        vehicle-type: small
        station-kind: startup
        devices: { bus: vehicle-bus, rollers: bench }
        defaults: { within: 60 s }
        parameters: { travel: { as: time, default: 20 s }, lowest: { as: number, unit: A, default: 1 A }, highest: { as: number, unit: A, default: 3 A } }
        steps:
          - { step: left, read: rollers.current }
          - { step: right, read: rollers.current }
          - { step: gap, read: rollers.gap }
          - { step: power, read: rollers.power }
          - { step: part, read: rollers.part }
          - { step: force, read: rollers.force }
          - { step: cycles, wait: 1 s }
          - { step: rate, compute: 12, unit: 1/min }
          - { step: trim, when: vehicle.rims == "alloy", read: rollers.gear }
          - group: lamps
            each: { lamp: [plate] }
            steps: [ { step: current, read: rollers.current } ]
          - group: run_up
            capture: { channels: [bus.engine_speed, rollers.speed, rollers.engine_speed, rollers.current, rollers.coolant, rollers.gear, rollers.brake_switch, rollers.turn_lamp, rollers.window_motor] }
            steps: [ { step: pause, wait: 1 s } ]
          - group: tried
            each: { ecu: [gateway], door: [front, rear], lamp: [low, high], side: [left, right] }
            steps:

        """;

    /// <summary>
    /// What may be said with a form, as the end of the sequence: a value of each type, a time, a condition, a computed number,
    /// quantity or truth, what follows the verdict.
    /// </summary>
    public static readonly IReadOnlyList<string> Ends =
    [
        .. new[]
        {
            $"read: rollers.current, expect: '{Mark}'",
            $"read: rollers.voltage, expect: '{Mark}'",
            $"read: rollers.gap, expect: '{Mark}'",
            $"compute: 90, unit: 1/min, expect: '{Mark}'",
            $"read: rollers.gear, expect: '{Mark}'",
            $"read: rollers.gear, expect: {Mark}",
            $"read: rollers.part, expect: '{Mark}'",
            $"read: rollers.codes, expect: '{Mark}'",
            $"read: rollers.codes, expect: {Mark}",
            $"read: rollers.brake_switch, expect: {Mark}",
            $"ask: Press., until: rollers.brake_switch, takes: '{Mark}'",
            $"when: '{Mark}', wait: 1 s",
            $"await: '{Mark}'",
            $"only-if: '{Mark}', wait: 1 s",
            $"compute: '{Mark}', unit: V",
            $"compute: '{Mark}'",
        }.Select(step => $"      - {{ step: odd, {step} }}\n"),
        $"      - {{ step: dry, wait: 1 s }}\nafter-verdict:\n  - {{ step: odd, only-if: '{Mark}', wait: 1 s }}\n",
    ];

    /// <summary>An example by itself, as a feature of a trace, of a ratio of traces, and as a trace of which something is taken.</summary>
    public static IReadOnlyList<string> Variants(string example) => example.StartsWith('.')
        ?
        [
            example,
            $"trace.run_up.rollers{example}",
            $"trace.run_up.rollers{example}.mean",
            $"trace.run_up.rollers.engine_speed.rpm.over(trace.run_up.rollers.speed.km_h){example}",
        ]
        : [example];
}
