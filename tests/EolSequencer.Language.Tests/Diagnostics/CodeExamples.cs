using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Language.Tests.Binding;
using EolSequencer.Language.Tests.ExpectedResults;
using EolSequencer.Language.Tests.Expressions.Kit;

namespace EolSequencer.Language.Tests.Diagnostics;

/// <summary>
/// Puts an example of the language reference where its heading says it stands, and tells what is found there. ⏎ is a line
/// break, ␉ a tab. A top-level key of an example takes the place of the same key in a file that is otherwise right.
/// </summary>
internal sealed class CodeExamples : IDisposable
{
    private const string LineBreak = "⏎";
    private const string Tab = "␉";

    private const string Step = """
        sequence: odd
        revision: 1
        vehicle-type: teal
        station-kind: startup
        devices: { bus: vehicle-bus, meter: supply-meter, rollers: brake-rollers }
        parameters: { side: { one-of: [left, right], default: left }, cooling: { as: time, default: 20 s } }
        steps:
          - { step: rest, read: meter.voltage, expect: 11 .. 13 V, within: 5 s }
          - { step: maybe, only-if: results.rest.V > 12, read: bus.feed, expect: 1 .. 2 A }
          - { step: pause, wait: 1 s }
          - { step: petrol, when: vehicle.powertrain == "petrol", read: bus.speed, expect: 700 .. 850 rpm }
          - { step: odd, %EXAMPLE% }
          - { step: later, read: meter.voltage, expect: 11 .. 13 V }

        """;

    private static readonly Dictionary<string, string[]> Files = new(StringComparer.Ordinal)
    {
        ["sequence"] =
        [
            "sequence: odd", "revision: 1", "vehicle-type: teal", "station-kind: startup", "devices: { bus: vehicle-bus, meter: supply-meter }",
            "defaults: { within: 5 s }", "steps: [ { step: first, wait: 1 s } ]",
        ],
        ["fragment"] = ["fragment: odd", "devices: { bus: vehicle-bus }", "steps: [ { step: first, read: bus.feed, expect: 1 .. 2 A } ]"],
        ["vehicle type"] =
        [
            "vehicle-type: odd", "options: { powertrain: { one-of: [petrol, electric] }, tow: { as: yes-no } }",
            "ecus: { gateway: { can: { request: 0x710, response: 0x718 } }, engine: { can: { request: 0x7E0, response: 0x7E8 }, when: vehicle.powertrain == \"petrol\" } }",
        ],
        ["device kind"] = ["device-kind: odd", "channels: { level: { as: number, unit: V } }"],
        ["plant"] = ["plant: odd", "zone: UTC", "route: [startup]"],
        ["station"] = ["station: odd", "station-kind: startup", "data: ../../../eol-data", "devices: { bus: { adapter: simulated-vehicle }, meter: { adapter: simulated-meter } }"],
        ["order"] =
        [
            "order: T-9", "vin: TESTVXN06AA000017", "vehicle-type: teal", "options: { drive: all, powertrain: petrol, rims: steel, tow: yes }",
            "facts: { market: north, paint: red, weight: 1800 kg, software: { gateway: G, brakes: B, powertrain: P }, tyres: { front: F, rear: R } }",
        ],
        ["operator script"] = ["operator-script: odd", "answers: { seen: ok }"],
        ["expected results"] = ["expected-results: odd", "station: startup_1", "tests: { t: { verdict: pass } }"],
    };

    private readonly TestPlant _plant = new();

    public CodeExamples() => _plant.Put("stations/bench.yaml", "station: bench\nstation-kind: startup\ndata: ../../eol-data\ndevices: { bus: { adapter: doip }, meter: { adapter: scpi } }\n");

    public void Dispose() => _plant.Dispose();

    /// <summary>The places where an example can stand, as the headings of the reference name them.</summary>
    public static IEnumerable<string> Places => [.. Files.Keys, "step", "expression", "yaml", "table"];

    /// <summary>The codes that are found with an example.</summary>
    public IReadOnlyList<string> Found(string place, string example)
    {
        var text = example.Replace(LineBreak, "\n", StringComparison.Ordinal).Replace(Tab, "\t", StringComparison.Ordinal);
        var findings = place switch
        {
            "expression" => Author.Compile(text).Report.InOrder,
            "yaml" => Texts.Read(text + "\n").Report.InOrder,
            "step" => Check("sequences/odd.yaml", Step.Replace("%EXAMPLE%", text, StringComparison.Ordinal)),
            "table" => Table(text),
            "plant" => Check("plant.yaml", File("plant", text)),
            _ => Check($"examples/{place.Replace(' ', '-')}.yaml", File(place, text)),
        };
        return [.. findings.Select(finding => finding.Code.Id).Distinct()];
    }

    private IReadOnlyList<Diagnostic> Table(string text)
    {
        using var plant = new TestPlant();
        plant.Put("limits/odd.csv", text);
        plant.Put("vehicle-types/teal.yaml", System.IO.File.ReadAllText(plant.PathOf("vehicle-types/teal.yaml")).Replace("limits:\n", "limits:\n  odd: { rows-from: limits/odd.csv }\n", StringComparison.Ordinal));
        return PlantChecker.Check([plant.Put("sequences/odd.yaml", Step.Replace("%EXAMPLE%", "read: meter.voltage, expect: limits.odd", StringComparison.Ordinal))], ExpressionCache.None).Diagnostics;
    }

    private IReadOnlyList<Diagnostic> Check(string path, string text)
    {
        var before = path == "plant.yaml" ? System.IO.File.ReadAllText(_plant.PathOf(path)) : null;
        var full = _plant.Put(path, text);
        try
        {
            // What a script answers is compared with all sequences of the plant.
            return PlantChecker.Check([path.StartsWith("examples/operator", StringComparison.Ordinal) ? _plant.Root : full], ExpressionCache.None, new SmallRehearsals()).Diagnostics;
        }
        finally
        {
            if (before is null) System.IO.File.Delete(full);
            else _plant.Put(path, before);
        }
    }

    private static string File(string kind, string example)
    {
        var keys = example.Split('\n').Where(line => line.Length > 0 && line[0] != ' ').Select(KeyOf).ToHashSet(StringComparer.Ordinal);
        var rest = Files[kind].Where(line => !keys.Contains(KeyOf(line)));
        var saysKind = keys.Contains(KeyOf(Files[kind][0])); // which stands first
        return string.Join('\n', saysKind ? [example, .. rest] : [.. rest, example]) + "\n";
    }

    private static string KeyOf(string line) => line.Split(':')[0];
}
