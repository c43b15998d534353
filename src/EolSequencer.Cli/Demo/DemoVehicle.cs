using EolSequencer.Model.Judging;

namespace EolSequencer.Cli.Demo;

/// <summary>A vehicle of the demonstration and what must come of it.</summary>
/// <param name="Story">What is told about it.</param>
/// <param name="Order">The order's file in the demo plant.</param>
/// <param name="Faults">What is wrong with it.</param>
/// <param name="Verdict">The roll-up's verdict.</param>
/// <param name="Caught">Steps that must be the ones that did not pass; empty: not said.</param>
internal sealed record DemoVehicle(string Story, string Order, string[] Faults, Verdict Verdict, string[] Caught)
{
    /// <summary>The three vehicles, all invented.</summary>
    public static DemoVehicle[] All { get; } =
    [
        new("a good vehicle", "FV-100231.yaml", [], Verdict.Pass, []),
        new(
            "a dead lamp, a battery just below its window, a trouble code in a control unit",
            "FV-100232.yaml",
            ["lamp_open=tail_left", "battery_voltage=12.35", "old_trouble_code=brakes"],
            Verdict.Fail,
            ["rest.voltage", "lights.rear"]),
        new("its bus falls silent midway", "FV-100233.yaml", ["bus_silent@120s"], Verdict.Error, []),
    ];
}
