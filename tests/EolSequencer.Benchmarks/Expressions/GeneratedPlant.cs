using System.Globalization;
using System.Text;
using EolSequencer.Benchmarks.Plants;

namespace EolSequencer.Benchmarks.Expressions;

/// <summary>A copy of the demo plant with one more sequence of many different expressions.</summary>
internal sealed class GeneratedPlant : IDisposable
{
    private readonly DemoCopy _plant = new();

    public GeneratedPlant(int expressions) => Sequence = _plant.Write(Path.Combine("startup", "generated.yaml"), Text(expressions));

    /// <summary>The generated sequence's file.</summary>
    public string Sequence { get; }

    /// <summary>Where its compiled expressions may be kept.</summary>
    public string Cache => _plant.Path("cache");

    /// <summary>Expression number n: ten shapes, each with numbers of its own.</summary>
    public static string Expression(int n)
    {
        var number = (n + 1).ToString(CultureInfo.InvariantCulture);
        return (n % 10) switch
        {
            0 => $"meter.battery_voltage.V * 2 + {number}",
            1 => $"meter.lamp_current.A - meter.horn_current.A + {number}",
            2 => $"(meter.blower_current.A + {number}) / 4.5",
            3 => $"meter.battery_voltage.mV / 1000 + {number}",
            4 => $"max(meter.lamp_current.A, {number})",
            5 => $"min(meter.lamp_current.A, meter.horn_current.A) * {number}",
            6 => $"abs(meter.lamp_current.A - {number})",
            7 => $"meter.heater_current.A > {number} ? 1.5 : 2.5",
            8 => $"round(meter.battery_voltage.V * {number}, 2)",
            _ => $"(meter.lamp_current.A + meter.blower_current.A + meter.heater_current.A) / 3.0 + {number}",
        };
    }

    public void Dispose() => _plant.Dispose();

    private static string Text(int expressions)
    {
        var text = new StringBuilder("""
            sequence: generated
            title: Generated expressions
            revision: 1
            vehicle-type: orrin
            station-kind: startup
            devices: { meter: dc-meter }
            defaults: { within: 5 s }
            steps:

            """);
        for (var n = 0; n < expressions; n++)
        {
            text.Append(CultureInfo.InvariantCulture, $"  - step: e{n}\n    compute: '{Expression(n)}'\n    unit: A\n    expect: at least 0 A\n");
        }

        return text.ToString();
    }
}
