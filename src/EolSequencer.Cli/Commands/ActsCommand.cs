using System.CommandLine;
using System.Globalization;
using EolSequencer.Cli.Administering;
using EolSequencer.Cli.Output;
using EolSequencer.Model.Judging;
using EolSequencer.Records.Administration;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary><c>eol acts</c>: who did what, when.</summary>
internal static class ActsCommand
{
    public static Command Make(IAnsiConsole console)
    {
        var person = new Option<string?>("--person") { Description = "Only by who has this badge.", HelpName = "BADGE" };
        var vin = new Option<string?>("--vin") { Description = "Only about this vehicle, under all its numbers.", HelpName = "VIN" };
        var act = new Option<string?>("--act") { Description = "Only this kind of act, such as repair-done.", HelpName = "ACT" }.AcceptOnlyFromAmong([.. ActReader.Kinds]);
        var from = Moments.Option("--from", "At this moment or later.");
        var until = Moments.Option("--until", "Before this moment.");
        var most = MostOption.Make(100);
        var options = new ActOptions();
        var command = new Command("acts", "The acts of administration in the ledger, newest first: who did what, when.") { person, vin, act, from, until, most };
        options.AddLookTo(command);
        command.SetAction(parsed =>
        {
            var wrong = Moments.Read(parsed.GetValue(from), out var first);
            wrong = Moments.Read(parsed.GetValue(until), out var last) ?? wrong;
            if (wrong is not null) return Refusals.Document(console, wrong.Why);
            return new ActSession(console, options.Of(parsed)).Look(record =>
            {
                var acts = record.Acts.List(new ActFilter
                {
                    By = parsed.GetValue(person), Vin = parsed.GetValue(vin), Act = parsed.GetValue(act), From = first, Until = last, Most = parsed.GetValue(most),
                });
                if (parsed.GetValue(options.Json)) JsonOutput.Write(console, acts);
                else foreach (var one in acts) Write(console, one);
                return ExitCode.Pass;
            });
        });
        return command;
    }

    private static void Write(IAnsiConsole console, RecordedAct act) => console.MarkupLineInterpolated(
        CultureInfo.InvariantCulture, $"{act.N,6}  {act.At.UtcDateTime:yyyy-MM-dd HH:mm:ss}  {act.By ?? "–"}  {act.Act}  [grey]{act.About.GetRawText()}[/]");
}
