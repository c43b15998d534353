using System.CommandLine;
using EolSequencer.Cli.Administering;
using EolSequencer.Cli.Output;
using EolSequencer.Model.Judging;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary><c>eol vin</c>: numbers of vehicles that were wrong.</summary>
internal static class VinCommand
{
    public static Command Make(IAnsiConsole console) => new("vin", "Numbers of vehicles that were wrong: listed, corrected.")
    {
        List(console), Correct(console),
    };

    private static Command List(IAnsiConsole console)
    {
        var options = new ActOptions();
        var command = new Command("list", "Which numbers were corrected to which.");
        options.AddLookTo(command);
        command.SetAction(parsed => new ActSession(console, options.Of(parsed)).Look(record =>
        {
            var found = record.Vins.List();
            if (parsed.GetValue(options.Json)) JsonOutput.Write(console, found);
            else foreach (var one in found) console.MarkupLineInterpolated($"{one.Wrong} → {one.Right}, by {one.By}: {one.Reason}");
            return ExitCode.Pass;
        }));
        return command;
    }

    private static Command Correct(IAnsiConsole console)
    {
        var wrong = new Argument<string>("WRONG") { Description = "The number under which it was recorded." };
        var right = new Argument<string>("RIGHT") { Description = "The number that the vehicle has." };
        var merge = new Option<bool>("--merge") { Description = "Both numbers have records of their own, and they are one vehicle." };
        var reason = ActTexts.Reason();
        var options = new ActOptions();
        var command = new Command("correct", "Says that what was recorded under a number is of the vehicle with another one; the records stay as they are. Changed over, it takes that back.") { wrong, right, reason, merge };
        options.AddTo(command);
        command.SetAction(parsed => new ActSession(console, options.Of(parsed)).Run(
            (administration, by) => administration.Vins.Correct(by, parsed.GetRequiredValue(wrong), parsed.GetRequiredValue(right), parsed.GetRequiredValue(reason), parsed.GetValue(merge)),
            done => ($"{done.Wrong} is corrected to {done.Right}", done)));
        return command;
    }
}
