using System.CommandLine;
using EolSequencer.Cli.Operators;
using EolSequencer.Cli.Output;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary><c>eol run</c>: one sequence on one vehicle, or the same again with other seeds.</summary>
internal static class RunCommand
{
    public static Command Make(IAnsiConsole console)
    {
        var sequence = new Argument<string?>("SEQUENCE")
        {
            Description = "The sequence's file; without it the one in force: the plant's only one for the vehicle's type and the station's kind.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var station = new Option<string>("--station") { Description = "The station's file.", HelpName = "FILE", Required = true };
        var order = new Option<string?>("--order") { Description = "The vehicle's order, as a file.", HelpName = "FILE" };
        var vin = new Option<string?>("--vin") { Description = "The vehicle's number; its order is looked for in the plant.", HelpName = "VIN" };
        var person = new Option<string[]>("--operator")
        {
            Description = "Who answers: simulated, terminal, or script FILE.",
            HelpName = "simulated|terminal|script FILE",
            Arity = new ArgumentArity(1, 2),
            AllowMultipleArgumentsPerToken = true,
            DefaultValueFactory = _ => [OperatorChoice.Simulated],
        };
        var clock = ClockOption.Make();
        var seed = SimulationOptions.Seed();
        var inject = SimulationOptions.Inject();
        var only = new Option<string[]>("--only")
        {
            Description = "Runs only these steps or groups, by id; such a run releases nothing.",
            HelpName = "PATH",
            DefaultValueFactory = _ => [],
            AllowMultipleArgumentsPerToken = true,
        };
        var retest = new Option<string?>("--retest")
        {
            Description = "Repeats what did not pass in this run, by the order and the sequence's text that the record keeps of it; with SEQUENCE by that newer revision.",
            HelpName = "RUN",
        };
        var repeat = new Option<int>("--repeat") { Description = "How often, each time with the next seed.", HelpName = "N", DefaultValueFactory = _ => 1 };
        var anew = new Option<bool>("--anew") { Description = "A run of this vehicle that broke off is ended, and a new one begins." };
        var language = LanguageOption.Make("Language of the prompts.");
        var data = new Option<string?>("--data") { Description = "The data folder that holds the record, and in its folder log the station's log of each day; without it the one of the station's file.", HelpName = "DIR" };
        var adapters = AdaptersOption.Make();
        var json = JsonOption.Make();
        var command = new Command("run", "Runs one sequence on one vehicle.")
        {
            sequence, station, order, vin, person, clock, seed, inject, only, retest, repeat, anew, language, data, adapters, json,
        };
        command.SetAction(parsed =>
        {
            var told = parsed.GetValue(json) ? ErrorConsole.Make() : console;
            if (AdaptersOption.Load(parsed.GetValue(adapters), out var fault) is not { } real) return Refusals.Document(told, fault!);
            return new RunSession(console, told, new RunChoices
            {
                Sequence = parsed.GetValue(sequence),
                Station = parsed.GetRequiredValue(station),
                Order = parsed.GetValue(order),
                Vin = parsed.GetValue(vin),
                Operator = parsed.GetRequiredValue(person),
                IsReal = parsed.GetRequiredValue(clock) == ClockOption.Real,
                Seed = parsed.GetValue(seed),
                Faults = parsed.GetRequiredValue(inject),
                Only = parsed.GetRequiredValue(only),
                Retest = parsed.GetValue(retest),
                Repeat = parsed.GetValue(repeat),
                Anew = parsed.GetValue(anew),
                Language = parsed.GetRequiredValue(language),
                Data = parsed.GetValue(data),
                AsJson = parsed.GetValue(json),
                Adapters = real,
            }).Run();
        });
        return command;
    }
}
