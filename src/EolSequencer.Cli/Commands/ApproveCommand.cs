using System.CommandLine;
using EolSequencer.Cli.Administering;
using EolSequencer.Cli.Output;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Judging;
using EolSequencer.Records.SequenceControl;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary><c>eol approve</c>: which sequence texts production may use.</summary>
internal static class ApproveCommand
{
    public static Command Make(IAnsiConsole console) => new("approve", "Says which sequence texts production may use: one puts a text forward, another approves it.")
    {
        Submit(console), Give(console), Withdraw(console), List(console), Show(console),
    };

    private static Command Submit(IAnsiConsole console)
    {
        var sequence = new Argument<string>("SEQUENCE") { Description = "The sequence's file; everything it is made from is kept with it." };
        var note = ActTexts.Text("--note", "What changed, and why.");
        var options = new ActOptions();
        var command = new Command("submit", "Puts a sequence's text forward as a draft, as its files are now.") { sequence, note };
        options.AddTo(command);
        command.SetAction(parsed =>
        {
            var loaded = SequenceLoader.Load(parsed.GetRequiredValue(sequence), ExpressionsFolder.Open());
            DiagnosticLines.Write(parsed.GetValue(options.Json) ? ErrorConsole.Make() : console, loaded.Diagnostics);
            return loaded.Sequence is not { } ready
                ? ExitCode.Document
                : new ActSession(console, options.Of(parsed)).Run(
                    (administration, by) => administration.Approvals.Submit(by, ready, parsed.GetRequiredValue(note)),
                    draft => (ApprovalLines.Of(draft), draft));
        });
        return command;
    }

    private static Command Give(IAnsiConsole console)
    {
        var draft = new Argument<string>("DRAFT") { Description = "What was put forward, such as draft-000001." };
        var station = new Option<string?>("--station") { Description = "At this station only; without it at every station of the sequence's kind.", HelpName = "ID" };
        var from = Moments.Option("--from", "In force from this moment on; without it at once.");
        var fromVehicle = new Option<string?>("--from-vehicle") { Description = "In force for this vehicle, and for all others once its first production run there has begun.", HelpName = "VIN" };
        var vins = new Option<string[]>("--vin") { Description = "A trial: in force for these vehicles only.", HelpName = "VIN", AllowMultipleArgumentsPerToken = true, DefaultValueFactory = _ => [] };
        var reason = ActTexts.Reason();
        var options = new ActOptions();
        var command = new Command("give", "Approves a draft; another person than the one who put it forward.") { draft, station, from, fromVehicle, vins, reason };
        options.AddTo(command);
        command.SetAction(parsed => new ActSession(console, options.Of(parsed)).Run(
            (administration, by) =>
            {
                if (Moments.Read(parsed.GetValue(from), out var begin) is { } noBegin) return noBegin;
                var scope = new ApprovalScope(parsed.GetValue(station), begin, parsed.GetValue(fromVehicle), [.. parsed.GetRequiredValue(vins)]);
                return administration.Approvals.Give(by, parsed.GetRequiredValue(draft), scope, parsed.GetRequiredValue(reason));
            },
            approval => (ApprovalLines.Of(approval), approval)));
        return command;
    }

    private static Command Withdraw(IAnsiConsole console)
    {
        var id = new Argument<string>("APPROVAL") { Description = "The approval, such as approval-000001." };
        var reason = ActTexts.Reason();
        var options = new ActOptions();
        var command = new Command("withdraw", "Withdraws an approval; the one before it is in force again.") { id, reason };
        options.AddTo(command);
        command.SetAction(parsed => new ActSession(console, options.Of(parsed)).Run(
            (administration, by) => administration.Approvals.Withdraw(by, parsed.GetRequiredValue(id), parsed.GetRequiredValue(reason)),
            approval => (ApprovalLines.Of(approval), approval)));
        return command;
    }

    private static Command List(IAnsiConsole console)
    {
        var all = new Option<bool>("--all") { Description = "Withdrawn approvals and every draft too." };
        var options = new ActOptions();
        var command = new Command("list", "The approvals that stand, and the drafts that wait for one.") { all };
        options.AddLookTo(command);
        command.SetAction(parsed => new ActSession(console, options.Of(parsed)).Look(record =>
        {
            var approvals = record.Approvals.List(parsed.GetValue(all));
            var drafts = record.Approvals.Drafts().Where(draft => parsed.GetValue(all) || draft.Approvals.IsEmpty).ToList();
            if (parsed.GetValue(options.Json)) JsonOutput.Write(console, new { approvals, drafts });
            else if (approvals.IsEmpty && drafts.Count == 0) console.WriteLine("nothing is approved, and nothing waits for it");
            else foreach (var line in approvals.Select(ApprovalLines.Of).Concat(drafts.Select(ApprovalLines.Of))) console.MarkupLineInterpolated($"{line}");
            return ExitCode.Pass;
        }));
        return command;
    }

    private static Command Show(IAnsiConsole console)
    {
        var id = new Argument<string>("DRAFT") { Description = "What was put forward, such as draft-000001." };
        var file = new Option<string?>("--file") { Description = "Prints the text of this file, as it was put forward.", HelpName = "PATH" };
        var options = new ActOptions();
        var command = new Command("show", "The files of a draft as they were put forward, or the text of one of them.") { id, file };
        options.AddLookTo(command);
        command.SetAction(parsed => new ActSession(console, options.Of(parsed)).Look(record =>
        {
            var told = parsed.GetValue(options.Json) ? ErrorConsole.Make() : console;
            if (record.Approvals.Texts(parsed.GetRequiredValue(id)) is not { } texts) return Refusals.Document(told, $"there is no such draft; 'eol approve list --all' shows them");
            if (parsed.GetValue(file) is { } path)
            {
                if (texts.FirstOrDefault(text => text.Path == path) is not { } found) return Refusals.Document(told, $"it has no such file; it has {string.Join(", ", texts.Select(text => text.Path))}");
                if (parsed.GetValue(options.Json)) JsonOutput.Write(console, found);
                else console.Profile.Out.Writer.Write(found.Text);
                return ExitCode.Pass;
            }

            if (parsed.GetValue(options.Json)) JsonOutput.Write(console, texts);
            else foreach (var text in texts) console.MarkupLineInterpolated($"{text.Hash}  {text.Path}");
            return ExitCode.Pass;
        }));
        return command;
    }
}
