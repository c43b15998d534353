using System.Globalization;
using System.Text;

namespace EolSequencer.Benchmarks.Plants;

/// <summary>
/// A plain sequence of many steps, in groups of fifty: of ten steps, six read and judge, two wait, one computes from the
/// step before it, and one has a condition.
/// </summary>
internal static class ManySteps
{
    /// <summary>So many steps have one of each kind.</summary>
    public const int Kinds = 10;

    /// <returns>The sequence's full path.</returns>
    public static string Write(DemoCopy plant, int steps)
    {
        var text = new StringBuilder("""
            sequence: many
            title: Many steps
            revision: 1
            vehicle-type: orrin
            station-kind: startup
            devices: { meter: dc-meter }
            defaults: { within: 5 s }
            steps:

            """);
        for (var step = 0; step < steps; step++)
        {
            if (step % 50 == 0) text.Append(CultureInfo.InvariantCulture, $"  - group: g{step / 50}\n    steps:\n");
            text.Append(CultureInfo.InvariantCulture, $"      - {{ step: s{step}, {Step(step)} }}\n");
        }

        return plant.Write(Path.Combine("startup", "many.yaml"), text.ToString());
    }

    private static string Step(int step) => (step % Kinds) switch
    {
        4 or 8 => "wait: 1 ms",
        6 => string.Create(CultureInfo.InvariantCulture, $"compute: 'results.s{step - 1}.V + {step}', unit: V, expect: at least 0 V"),
        9 => "read: meter.battery_voltage, when: vehicle.doors == \"double\" || vehicle.rims == \"alloy\", expect: 5 .. 20 V",
        _ => "read: meter.battery_voltage, expect: 5 .. 20 V",
    };
}
