using System.Collections.Immutable;
using System.CommandLine;
using EolSequencer.Cli.Administering;
using EolSequencer.Cli.Output;
using EolSequencer.Records.Administration;
using EolSequencer.Records.Nonconformities;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary><c>eol repair</c>: what was done about a nonconformity.</summary>
internal static class RepairCommand
{
    private const string Rework = "rework";

    public static Command Make(IAnsiConsole console)
    {
        var id = ActTexts.Nonconformity();
        var what = ActTexts.Text("--what", "What was done.");
        var kind = new Option<string>("--kind")
        {
            Description = "rework: it shall conform again, a retest shows it; repair: it shall be fit for use, and wants a concession as well.",
            HelpName = "rework|repair",
            DefaultValueFactory = _ => Rework,
        }.AcceptOnlyFromAmong(Rework, "repair");
        var parts = new Option<string[]>("--part")
        {
            Description = "A part that was fitted, with its serial number.",
            HelpName = "PART=SERIAL",
            AllowMultipleArgumentsPerToken = true,
            DefaultValueFactory = _ => [],
        };
        var options = new ActOptions();
        var command = new Command("repair", "Says what was done about a nonconformity.") { id, what, kind, parts };
        options.AddTo(command);
        command.SetAction(parsed => new ActSession(console, options.Of(parsed)).Run(
            (administration, by) =>
            {
                if (PartsOf(parsed.GetRequiredValue(parts), out var fitted) is { } wrong) return wrong;
                var (office, text) = (administration.Nonconformities, parsed.GetRequiredValue(what));
                return parsed.GetRequiredValue(kind) == Rework ? office.Rework(by, parsed.GetRequiredValue(id), text, fitted) : office.Repair(by, parsed.GetRequiredValue(id), text, fitted);
            },
            NonconformityText.Tell));
        return command;
    }

    private static Refused? PartsOf(string[] written, out ImmutableArray<FittedPart> parts)
    {
        var pairs = written.Select(text => text.Split('=', 2)).ToList();
        parts = [.. pairs.Where(pair => pair.Length == 2).Select(pair => new FittedPart(pair[0], pair[1]))];
        return pairs.Exists(pair => pair.Length != 2) ? new Refused(Refusal.Malformed, "a part is written PART=SERIAL") : null;
    }
}
