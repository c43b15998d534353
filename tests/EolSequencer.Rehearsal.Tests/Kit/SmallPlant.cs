using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Events;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Vehicles;
using EolSequencer.Rehearsal.Replay;
using EolSequencer.Rehearsal.Simulated;
using EolSequencer.Simulators.Faults;

namespace EolSequencer.Rehearsal.Tests.Kit;

/// <summary>A short sequence on the demo vehicle, of which tests make revisions by replacing a text.</summary>
internal static class SmallPlant
{
    private const string Path = "small/small.yaml";

    private const string Text = """
        sequence: small
        title: Small
        revision: 1
        vehicle-type: orrin
        station-kind: startup
        devices: { bus: vehicle-bus, meter: dc-meter }
        defaults: { within: 20 s }
        steps:
          - group: identity
            steps:
              - { step: plates, judge: { en: The plates show the same number., es: Las placas muestran el mismo número. } }
          - group: supply
            steps:
              - { step: voltage, read: meter.battery_voltage, expect: 12.0 .. 13.0 V, uncertainty: 0.05 V }
              - { step: again, read: meter.battery_voltage, expect: 12.0 .. 13.0 V, on-fail: stop }
              - { step: settled, sample: meter.battery_voltage, for: 2 s, every: 200 ms, reduce: min, expect: at least 12 V }
              - { step: margin, compute: results.voltage.V - 12, unit: V, expect: 0 .. 1 V }
              - { step: live, compute: meter.battery_voltage.V * 2, unit: V, expect: 20 .. 30 V }
              - { step: extra, only-if: results.voltage.verdict == "pass", read: bus.ambient, expect: 0 .. 40 °C }
          - group: body
            place: walk_round
            steps:
              - step: hood
                ask: { en: "Open the hood to the safety catch, then close it.", es: "Abra el capó hasta el gancho de seguridad y ciérrelo." }
                until: bus.hood_open
                takes: .. 20 s
              - { step: coding, read: bus.coding, expect: equals (order.coding) }
              - { step: all_doors, when: vehicle.doors == "single", read: bus.door_locked, expect: no }
          - group: calm
            capture: { channels: [bus.wheel_speed], every: 100 ms }
            steps:
              - { step: watched, wait: 1 s }
          - step: still
            compute: 'trace.calm.bus.wheel_speed["fl"].max'
            expect: at most 1 km/h
        """;

    private static readonly IReadOnlyList<SourceCopy> Shared =
        [.. DemoPlant.Startup.Sequence!.Sources.Where(source => source.Path != "startup/startup.yaml" && !source.Path.StartsWith("fragments/", StringComparison.Ordinal))];

    private static readonly ExpressionCache Cache = ExpressionCache.In(Directory.CreateTempSubdirectory("eol-small-").FullName);

    /// <summary>What records of it hold is loaded as quickly.</summary>
    public static RecordedRevisions Recorded { get; } = new(Cache);

    /// <summary>The sequence as it is first.</summary>
    public static Revision First { get; } = Load(Text);

    /// <summary>The same with texts in place of others: old, young, old, young …</summary>
    public static Revision With(params string[] changes)
    {
        var text = Text;
        foreach (var pair in changes.Chunk(2))
        {
            Assert.Contains(pair[0], text, StringComparison.Ordinal);
            text = text.Replace(pair[0], pair[1], StringComparison.Ordinal);
        }

        return Load(text);
    }

    /// <summary>Rehearses the first revision.</summary>
    public static IReadOnlyList<RunEvent> Rehearse(int order = 0, ulong seed = 1, params string[] faults) => Rehearse(First, order, seed, faults);

    public static IReadOnlyList<RunEvent> Rehearse(Revision revision, int order, ulong seed, params string[] faults) => Rehearse(revision, IPartSerials.None, order, seed, faults);

    public static IReadOnlyList<RunEvent> Rehearse(Revision revision, IPartSerials serials, int order = 0, ulong seed = 1, params string[] faults)
    {
        var journal = new Recorded();
        var end = VirtualRun.Run(new VirtualRunRequest
        {
            Run = "startup_1-000001",
            Sequence = revision.Sequence,
            Plant = DemoPlant.Startup.Plant!,
            Station = DemoPlant.Station,
            Order = DemoPlant.Orders[order],
            Journal = journal,
            Start = new DateTimeOffset(2026, 11, 25, 6, 0, 0, TimeSpan.Zero),
            Seed = seed,
            Serials = serials,
            Faults = [.. faults.Select(fault => FaultText.Parse(fault).Fault!)],
        });
        Assert.Empty(end.End.Faults);
        return journal.Events;
    }

    private static Revision Load(string text)
    {
        var result = SequenceLoader.LoadRecorded([new SourceCopy(Path, "", text), .. Shared], "small", Cache);
        Assert.Empty(result.Diagnostics.Select(one => one.ToString()));
        return new Revision(result.Sequence!);
    }
}
