using System.CommandLine;
using EolSequencer.Cli.Output;
using EolSequencer.Model.Judging;
using EolSequencer.Records;
using EolSequencer.Records.Witnessing;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary><c>eol witness</c>: hashes of the ledger, to be kept elsewhere.</summary>
internal static class WitnessCommand
{
    public static Command Make(IAnsiConsole console)
    {
        var every = new Option<long>("--every") { Description = "Entries of a range.", HelpName = "N", DefaultValueFactory = _ => 1000 };
        every.Validators.Add(result =>
        {
            if (result.Tokens is [var token] && (!long.TryParse(token.Value, out var number) || number < 1)) result.AddError($"--every is '{token.Value}'; a number of entries from 1 is wanted");
        });
        var data = DataOption.Make();
        var json = JsonOption.Make();
        var command = new Command("witness", "Prints hashes of the ledger, a line a range of entries; kept elsewhere, they show later that nothing was cut off or rewritten ('eol verify --witness').") { every, data, json };
        command.SetAction(parsed =>
        {
            var opened = RecordFolder.Open(parsed.GetRequiredValue(data));
            if (opened is not FolderResult<RecordFolder>.Opened { Folder: var record }) return Refusals.Folder(console, opened);
            try
            {
                return Print(console, record.Witness(parsed.GetValue(every)), parsed.GetValue(json));
            }
            catch (RecordFault trouble)
            {
                return Refusals.Equipment(console, trouble.Message);
            }
        });
        return command;
    }

    private static int Print(IAnsiConsole console, LedgerWitness? witness, bool asJson)
    {
        if (witness is null) return Refusals.Equipment(console, "the ledger has no entry; run verify");
        if (asJson) JsonOutput.Write(console, new { entries = witness.UpTo, lines = witness.Lines.Select(line => new { from = line.From, to = line.To, hash = line.Hash }) });
        else foreach (var line in witness.Lines) console.Profile.Out.Writer.WriteLine(WitnessText.Of(line));
        return ExitCode.Pass;
    }
}
