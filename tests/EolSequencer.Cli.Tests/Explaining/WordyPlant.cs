namespace EolSequencer.Cli.Tests.Explaining;

/// <summary>A plant whose one sequence uses every action and everything that can be said about a step.</summary>
internal sealed class WordyPlant : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("wordy-plant-");

    public WordyPlant()
    {
        Put("plant.yaml", """
            plant: small
            title: { en: Small works, es: Taller }
            zone: Etc/UTC
            day-starts: '06:00'
            route: [startup]
            languages: [en, es]
            places: { seat: { en: Driver's seat, es: Asiento }, rear: { en: Behind the vehicle, es: Detrás } }
            """);
        Put("type.yaml", """
            vehicle-type: box
            title: { en: Box van, es: Furgón }
            options: { tow: { as: yes-no }, drive: { one-of: [fwd, awd] } }
            limits:
              lamp: [ { when: vehicle.tow, is: 1.0 .. 3.0 A }, { when: "!vehicle.tow", is: 1.0 .. 2.0 A } ]
            ecus:
              gateway: { can: { request: 0x710, response: 0x718 } }
              transfer: { can: { request: 0x711, response: 0x719 }, when: vehicle.drive == "awd" }
            channels:
              brake_switch: { frame: 0x1A0, bit: 3, cycle: 20 ms, as: yes-no }
              speed: { obd: 0x0C }
              part: { from: ecus, by: ecus, data: 0xF187, as: text(10) }
            actions:
              horn: { from: gateway, control: 0x2201, to: yes-no, energises: true }
              session: { from: ecus, service: extended-session }
            """);
        Put("meter.yaml", """
            device-kind: dc-meter
            sharing: exclusive
            channels: { current: { as: number, unit: A } }
            actions: { start: { with: { time: { as: time } } } }
            """);
        Put("station.yaml", """
            station: bench
            station-kind: startup
            data: ../wordy-plant-data
            devices:
              bus: { adapter: simulated-vehicle }
              meter: { adapter: simulated-meter, instrument: { id: M-1, calibration-due: 2027-03-31 } }
            """);
        Put("lamp.svg", "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"9\" height=\"9\"/>");
        Put("order.yaml", "order: W-1\nvin: TESTVXN06AA000017\nvehicle-type: box\noptions: { tow: no, drive: fwd }\n");
        Put("tow.yaml", "order: W-2\nvin: TESTVXN06AA000017\nvehicle-type: box\noptions: { tow: yes, drive: awd }\n");
        Put("wordy.yaml", Sequence);
    }

    public string PathOf(string file) => Path.Combine(_folder.FullName, file);

    public void Put(string file, string text) => File.WriteAllText(PathOf(file), text);

    public void Dispose() => _folder.Delete(recursive: true);

    private const string Sequence = """
        sequence: wordy
        title: { en: All words, es: Todo }
        revision: 3
        vehicle-type: box
        station-kind: startup
        cycle-time: 60 s
        devices: { bus: vehicle-bus, meter: dc-meter }
        parameters: { settle: { as: time, default: 4 s, window: 1 .. 9 s } }
        words: { side: { left: { en: left, es: izquierda }, right: { en: right, es: derecha } } }
        defaults: { within: 5 s }
        prepare:
          - { step: session, do: bus.session }
        steps:
          - group: lamps
            title: Lamps
            place: rear
            require: { that: bus.brake_switch, else: stop }
            capture: { channels: [bus.speed], every: 50 ms }
            caution: { en: Hands off., es: No tocar. }
            steps:
              - { step: seen, judge: { en: All are lit., es: Encendidas. }, picture: lamp.svg, nonconformity: { code: lamp_out, where: [left, right] }, repair: { en: Change the bulb., es: Cambie la bombilla. }, requirement: [TR-1, TR-2], class: safety }
              - { step: current, read: meter.current, expect: limits.lamp, uncertainty: 0.05 A, decision: guarded, retry: { times: 2, on: [error], pause: 500 ms }, show: { en: Wait., es: Espere. }, on-fail: ask }
          - together:
              person:
                - { step: pedal, ask: { en: Press the pedal., es: Pise. }, until: bus.brake_switch, place: seat, takes: 1 .. 3 s, lasting: 500 ms, caution: not-needed }
                - group: turn
                  any-order: true
                  each: { side: [left, right] }
                  steps:
                    - { step: look, judge: { en: "Look {side}.", es: "Mire a la {side}." }, planned: 2 s }
              machine:
                - { step: calm, sample: bus.speed, for: (settle), every: 500 ms, reduce: mean, may-miss: 1, expect: 0 ± 5 rpm }
                - { step: stopped, await: bus.speed.rpm <= 5 && !vehicle.tow, only-if: "results.lamps.current.A > 1", edge: true }
          - group: parts
            each: { ecu: ecus }
            steps:
              - { step: part, read: "bus.part[ecu]", expect: "matches /[0-9A-Z]{10}/", if-missing: fail }
          - { step: gauge, enter: { en: Read the gauge., es: Lea. }, expect: 240 .. 250 kPa }
          - { step: label, scan: { en: Scan the label., es: Escanee. }, expect: equals (vehicle.vin), on-fail: stop }
          - { step: wheels, choose: { en: "Which wheels?", es: "¿Qué ruedas?" }, among: [steel, alloy], expect: equals steel, record-only: true }
          - { step: tow, when: vehicle.tow, ask: { en: Plug in the box., es: Conecte. } }
          - { step: horn, set: bus.horn, to: yes, caution: { en: The horn sounds., es: Suena. } }
          - { step: measure, do: meter.start, with: { time: 500 ms } }
          - { step: pause, wait: 1500 ms }
          - { step: gap, compute: results.lamps.current.A - 1.0, unit: A, expect: at most 0.5 A }
        always:
          - { step: quiet, set: bus.horn, to: no, caution: not-needed }

        """;
}
