using System.CommandLine;
using EolSequencer.Cli.Output;
using EolSequencer.Cli.Rehearsing;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary><c>eol rehearse</c>: shows on simulated vehicles that every check can fail, and that good vehicles pass.</summary>
internal static class RehearseCommand
{
    public static Command Make(IAnsiConsole console)
    {
        var sequence = new Argument<string?>("SEQUENCE") { Description = "The sequence's file; not with --report.", Arity = ArgumentArity.ZeroOrOne };
        var station = new Option<string?>("--station") { Description = "A station's file with simulated devices; without it the first of the plant of the sequence's kind.", HelpName = "FILE" };
        var into = new Option<string?>("--into") { Description = "The file that keeps the campaign; one that is there is continued. Without it SEQUENCE's name with .campaign, in this folder.", HelpName = "FILE" };
        var report = new Option<string?>("--report") { Description = "Runs nothing: says what this campaign has shown.", HelpName = "FILE" };
        var seeds = new Option<int>("--seeds") { Description = "How often each good vehicle is run, each time with the next seed.", HelpName = "N", DefaultValueFactory = _ => 5 };
        var seed = SimulationOptions.Seed();
        var every = new Option<bool>("--every-vehicle") { Description = "Tries each fault on every combination of options, not only on those that show every two option values together." };
        var pairs = new Option<bool>("--pairs") { Description = "Also with two faults at a time: every two fault points together once." };
        var cores = new Option<int>("--cores") { Description = "How many runs go on at a time.", HelpName = "N", DefaultValueFactory = _ => Environment.ProcessorCount };
        var html = new Option<string?>("--html") { Description = "Writes the findings as a page with the matrix of faults and steps to this file.", HelpName = "FILE" };
        var json = JsonOption.Make();
        var command = new Command("rehearse", "Rehearses a sequence: good vehicles of every combination, then every fault; ends with 1 when a fault of class safety escapes or a good vehicle does not pass.")
        {
            sequence, station, into, report, seeds, seed, every, pairs, cores, html, json,
        };
        command.SetAction(parsed => new RehearseSession(console, parsed.GetValue(json) ? ErrorConsole.Make() : console, new RehearseChoices
        {
            Sequence = parsed.GetValue(sequence),
            Station = parsed.GetValue(station),
            Into = parsed.GetValue(into),
            Report = parsed.GetValue(report),
            Settings = new(parsed.GetValue(seeds), parsed.GetValue(seed), parsed.GetValue(every), parsed.GetValue(pairs)),
            Cores = parsed.GetValue(cores),
            Html = parsed.GetValue(html),
            AsJson = parsed.GetValue(json),
        }).Run());
        return command;
    }
}
