using EolSequencer.Engine.Planning;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Events;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Vehicles;
using EolSequencer.Rehearsal.Tests.Kit;

namespace EolSequencer.Rehearsal.Tests.WholeSystem;

/// <summary>A short sequence on the demo vehicle with everything that a run can go through.</summary>
internal static class SystemPlant
{
    private const string Text = """
        sequence: system
        title: System
        revision: 1
        vehicle-type: orrin
        station-kind: startup
        devices: { bus: vehicle-bus, meter: dc-meter, line: line-signal }
        defaults: { within: 5 s, class: function, on-fail: continue }
        prepare:
          - { step: session, do: bus.extended_session }
          - { step: zero, do: meter.zero }
        steps:
          - together:
              person:
                - group: identity
                  defaults: { within: 30 s, class: safety }
                  steps:
                    - { step: label, scan: { en: Scan the label., es: Escanee la etiqueta. }, expect: equals (vehicle.vin), on-fail: stop }
                    - { step: plates, judge: { en: The plates show the same number., es: Las placas muestran el mismo número. } }
              units:
                - group: rest
                  steps:
                    - { step: voltage, read: meter.battery_voltage, expect: limits.battery_rest, retry: { times: 2, on: [error, fail], pause: 500 ms } }
                    - { step: settled, sample: meter.battery_voltage, for: 1 s, every: 200 ms, reduce: min, expect: at least 12 V }
                    - { step: margin, compute: results.voltage.V - 12, unit: V, expect: 0 .. 1 V }
                    - { step: shop, only-if: results.voltage.verdict == "pass", read: bus.ambient, expect: 0 .. 40 °C }
                - group: coding
                  steps:
                    - { step: write_vin, set: bus.write_vin, to: (vehicle.vin), if-missing: fail, on-fail: stop }
                    - { step: write_variant, set: bus.write_coding, to: (order.coding) }
                    - { step: vin, read: bus.vin, expect: equals (vehicle.vin), if-missing: fail, class: safety }
                - group: control_units
                  require: { that: bus.gateway_awake, else: stop }
                  each: { ecu: [gateway, brakes, camera] }
                  steps:
                    - { step: software, read: "bus.software[ecu]", expect: "equals (order.software[ecu])", if-missing: fail, class: safety }
          - group: doors
            place: walk_round
            any-order: true
            each: { door: [front_left, front_right, side, rear_second] }
            defaults: { within: 20 s, class: safety }
            steps:
              - step: ajar
                when: door != "rear_second" || vehicle.doors == "double"
                ask: { en: "Open and close: {door}.", es: "Abra y cierre: {door}." }
                until: bus.door_ajar[door]
          - group: body
            place: walk_round
            steps:
              - step: hood
                ask: { en: Open the hood., es: Abra el capó. }
                until: bus.hood_open
                within: 20 s
                on-fail: ask
              - { step: coding, read: bus.coding, expect: equals (order.coding), on-fail: stop }
          - group: lamps
            retry: { times: 1, on: [fail, error] }
            require: bus.gateway_awake
            each: { lamp: [low_left, tail_right] }
            defaults: { class: safety }
            steps:
              - { step: lit, set: "bus.lamp[lamp]", to: yes }
              - { step: inrush, wait: 150 ms }
              - { step: current, read: meter.lamp_current, expect: "limits.lamp_current[lamp]" }
            always:
              - { step: dark, set: "bus.lamp[lamp]", to: no }
          - group: brake_lamps
            place: driver_seat
            retry: 1
            steps:
              - { step: pedal, ask: { en: Press the brake pedal and hold it., es: Pise el freno y manténgalo. }, until: bus.brake_switch, within: 20 s, takes: .. 8 s }
              - { step: settled, wait: 500 ms }
              - { step: travel, read: bus.pedal_travel, require: bus.brake_switch, expect: limits.pedal_travel }
          - group: calm
            capture: { channels: [bus.wheel_speed], every: 100 ms }
            steps:
              - { step: watched, wait: 1 s }
          - step: still
            compute: 'trace.calm.bus.wheel_speed["fl"].max'
            expect: at most 0.2 km/h
            on-fail: stop
          - step: last_look
            caution: { en: Nobody in front., es: Nadie delante. }
            read: bus.hood_open
            expect: no
        always:
          - { step: outputs_back, do: bus.return_control, within: 2 s }
          - { step: session_end, do: bus.default_session, within: 2 s }
        after-verdict:
          - { step: tell_passed, only-if: run.verdict == "pass", set: line.tell, to: passed }
          - { step: tell_not_passed, only-if: run.verdict != "pass", set: line.tell, to: not_passed }
        """;

    /// <summary>The checked sequence.</summary>
    public static CheckedSequence Sequence { get; } = Load();

    /// <summary>What of it a vehicle gets.</summary>
    public static Plan PlanFor(Order order) => Planner.For(Sequence, order);

    /// <summary>Ids of all steps of a plan.</summary>
    public static IEnumerable<string> StepsOf(Plan plan) => Plan.StepsOf(plan.Prepare, plan.Steps, plan.Always, plan.AfterVerdict).Select(step => step.Id);

    private static CheckedSequence Load()
    {
        var shared = DemoPlant.Startup.Sequence!.Sources.Where(source => source.Path != "startup/startup.yaml" && !source.Path.StartsWith("fragments/", StringComparison.Ordinal));
        var result = SequenceLoader.LoadRecorded([new SourceCopy("system/system.yaml", "", Text), .. shared], "system", ExpressionCache.None);
        Assert.Empty(result.Diagnostics.Select(one => one.ToString()));
        return result.Sequence!;
    }
}
