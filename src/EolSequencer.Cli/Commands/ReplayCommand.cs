using System.CommandLine;
using EolSequencer.Cli.Replaying;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary><c>eol replay</c>: what another revision of a sequence says of what was recorded.</summary>
internal static class ReplayCommand
{
    public static Command Make(IAnsiConsole console)
    {
        var run = new Argument<string?>("RUN") { Description = "One recorded run; without it all of some days.", Arity = ArgumentArity.ZeroOrOne };
        var with = new Option<string?>("--with") { Description = "The sequence to judge by; without it one run is judged by the sequence that was recorded.", HelpName = "SEQUENCE" };
        var from = new Option<string?>("--from") { Description = "The first day, as 2026-11-01, by the plant's clock.", HelpName = "DATE" };
        var to = new Option<string?>("--to") { Description = "The last day, it included.", HelpName = "DATE" };
        var station = new Option<string?>("--station") { Description = "Only the runs of this station.", HelpName = "ID" };
        var rehearsals = new Option<bool>("--rehearsals") { Description = "Rehearsals of these days instead of production runs." };
        var unverified = new Option<bool>("--unverified") { Description = "Also judges what is not as it was written, and marks it." };
        var data = DataOption.Make();
        var json = JsonOption.Make();
        var command = new Command("replay", "Judges recorded runs again, by the same or a changed revision of their sequence; ends with 1 when a verdict changes, with 4 when only undecidable ones could.")
        {
            run, with, from, to, station, rehearsals, unverified, data, json,
        };
        command.SetAction(parsed =>
        {
            var choices = new ReplayChoices
            {
                With = parsed.GetValue(with),
                Unverified = parsed.GetValue(unverified),
                Data = parsed.GetRequiredValue(data),
                AsJson = parsed.GetValue(json),
            };
            return (parsed.GetValue(run), parsed.GetValue(from), parsed.GetValue(to)) switch
            {
                ({ } id, null, null) => new ReplaySession(console, choices).Run(id),
                (null, { } first, { } last) => new WhatIfSession(console, choices, new WhatIfChoices(first, last, parsed.GetValue(station), parsed.GetValue(rehearsals))).Run(),
                _ => Refusals.Document(console, "either a run or the days --from and --to are wanted"),
            };
        });
        return command;
    }
}
