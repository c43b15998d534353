using System.CommandLine;
using System.Globalization;
using EolSequencer.Cli.Administering;
using EolSequencer.Cli.Output;
using EolSequencer.Model.Judging;
using EolSequencer.Records.Administration;
using EolSequencer.Records.Holds;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary><c>eol hold</c>: keeps back vehicles that may share a fault, and lets them go.</summary>
internal static class HoldCommand
{
    public static Command Make(IAnsiConsole console) => new("hold", "Keeps back vehicles that may share a fault, and lets them go.") { List(console), Place(console), Lift(console) };

    private static Command List(IAnsiConsole console)
    {
        var all = new Option<bool>("--all") { Description = "Lifted ones too." };
        var options = new ActOptions();
        var command = new Command("list", "The holds, each with the vehicles that match now.") { all };
        options.AddLookTo(command);
        command.SetAction(parsed => new ActSession(console, options.Of(parsed)).Look(record =>
        {
            var holds = record.Holds.List(parsed.GetValue(all)).Select(hold => (Hold: hold, Vehicles: record.Holds.Vehicles(hold.Query))).ToList();
            if (parsed.GetValue(options.Json)) JsonOutput.Write(console, holds.Select(one => new { hold = one.Hold, vehicles = one.Vehicles }));
            else if (holds.Count == 0) console.WriteLine("no vehicle is held");
            else foreach (var (hold, vehicles) in holds) console.MarkupLineInterpolated($"{Line(hold)}: {string.Join(" ", vehicles)}");
            return ExitCode.Pass;
        }));
        return command;
    }

    private static Command Place(IAnsiConsole console)
    {
        var vins = new Option<string[]>("--vin") { Description = "These vehicles.", HelpName = "VIN", AllowMultipleArgumentsPerToken = true, DefaultValueFactory = _ => [] };
        var fact = new Option<string?>("--fact") { Description = "An order fact or option with its value, such as a part lot, or a part with its serial.", HelpName = "NAME=VALUE" };
        var from = Moments.Option("--from", "Run begun at this moment or later.");
        var until = Moments.Option("--until", "Run begun before this moment.");
        var station = new Option<string?>("--station") { Description = "Run at this station.", HelpName = "ID" };
        var instrument = new Option<string?>("--instrument") { Description = "Run with this instrument.", HelpName = "ID" };
        var program = new Option<string?>("--program") { Description = "Run by this version of the program.", HelpName = "VERSION" };
        var reason = ActTexts.Reason();
        var options = new ActOptions();
        var command = new Command("place", "Holds every vehicle for which all of this is true, also those that are run later.") { vins, fact, from, until, station, instrument, program, reason };
        options.AddTo(command);
        command.SetAction(parsed => new ActSession(console, options.Of(parsed)).Run(
            (administration, by) =>
            {
                var pair = parsed.GetValue(fact)?.Split('=', 2);
                if (pair is [_]) return new Refused(Refusal.Malformed, "a fact is written NAME=VALUE");
                if (Moments.Read(parsed.GetValue(from), out var begin) is { } noBegin) return noBegin;
                if (Moments.Read(parsed.GetValue(until), out var end) is { } noEnd) return noEnd;
                var query = new HoldQuery(
                    [.. parsed.GetRequiredValue(vins)], pair?[0], pair?[1], begin, end, parsed.GetValue(station), parsed.GetValue(instrument), parsed.GetValue(program));
                return administration.Holds.Place(by, query, parsed.GetRequiredValue(reason));
            },
            hold => (Line(hold), hold)));
        return command;
    }

    private static Command Lift(IAnsiConsole console)
    {
        var id = new Argument<string>("ID") { Description = "The hold, such as hold-0001." };
        var reason = ActTexts.Reason();
        var options = new ActOptions();
        var command = new Command("lift", "Lets the vehicles of a hold go.") { id, reason };
        options.AddTo(command);
        command.SetAction(parsed => new ActSession(console, options.Of(parsed)).Run(
            (administration, by) => administration.Holds.Lift(by, parsed.GetRequiredValue(id), parsed.GetRequiredValue(reason)),
            hold => (Line(hold), hold)));
        return command;
    }

    private static string Line(Hold hold) => $"{hold.Id} ({hold.Reason}) {(hold.Lifted is null ? $"holds, {hold.Matched} matched when it was placed" : $"is lifted: {hold.Lifted}")}";
}
