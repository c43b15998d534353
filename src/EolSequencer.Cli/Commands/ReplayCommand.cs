using System.CommandLine;
using EolSequencer.Cli.Replaying;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary><c>eol replay</c>: what another revision of a sequence says of what was recorded.</summary>
internal static class ReplayCommand
{
    public static Command Make(IAnsiConsole console)
    {
        var run = new Argument<string>("RUN") { Description = "The recorded run." };
        var with = new Option<string?>("--with") { Description = "The sequence to judge by; without it the one that was recorded.", HelpName = "SEQUENCE" };
        var unverified = new Option<bool>("--unverified") { Description = "Also judges what is not as it was written, and marks it." };
        var data = DataOption.Make();
        var json = JsonOption.Make();
        var command = new Command("replay", "Judges a recorded run again, by the same or a changed revision of its sequence; ends with 1 when a verdict changes, with 4 when only undecidable ones could.")
        {
            run, with, unverified, data, json,
        };
        command.SetAction(parsed => new ReplaySession(console, new ReplayChoices
        {
            With = parsed.GetValue(with),
            Unverified = parsed.GetValue(unverified),
            Data = parsed.GetRequiredValue(data),
            AsJson = parsed.GetValue(json),
        }).Run(parsed.GetRequiredValue(run)));
        return command;
    }
}
