using EolSequencer.Cli.Probing.Scratch;

namespace EolSequencer.Cli.Probing.Verbs;

/// <summary><c>eval</c>, and every line that begins with no command: C# over the channels.</summary>
internal sealed class EvalVerb(ScratchDesk desk) : IVerb
{
    public string Word => "eval";

    public IReadOnlyList<(string Form, string Meaning)> Forms =>
    [
        ("eval C#", "any C#; so is every line that begins with no command. Variables stay: var before = battery_voltage"),
        ("", "channels are read when they are named: bus.engine_speed.rpm, bus.door_ajar[\"rear\"], battery_voltage.V * 1.05"),
    ];

    public Task RunAsync(string rest, ProbeTurn turn) =>
        rest.Length > 0 ? desk.EvaluateAsync(rest, turn) : throw new ProbeTrouble("write C# behind it, such as  eval battery_voltage.V * 2");
}
