using System.CommandLine;
using EolSequencer.Cli.Output;
using EolSequencer.Model.Judging;
using EolSequencer.Records;
using EolSequencer.Records.Verify;
using EolSequencer.Records.Witnessing;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary><c>eol verify</c>: walks ledger, chains and seals of a data folder.</summary>
internal static class VerifyCommand
{
    private const int MostShown = 50;

    public static Command Make(IAnsiConsole console)
    {
        var witness = new Option<string?>("--witness") { Description = "What 'eol witness' printed earlier, or fingerprints, one a line: compares the ledger with it.", HelpName = "FILE" };
        var data = DataOption.Make();
        data.Description = "The data folder that holds the record, or a copy of the record as a file.";
        var json = JsonOption.Make();
        var command = new Command("verify", "Walks ledger, chains and seals of a data folder; ends with 0 only when all is whole.") { witness, data, json };
        command.SetAction(parsed => Run(console, parsed.GetRequiredValue(data), parsed.GetValue(witness), parsed.GetValue(json)));
        return command;
    }

    private static int Run(IAnsiConsole console, string folder, string? witnessFile, bool asJson)
    {
        string? fault = null;
        var witness = witnessFile is null ? null : WitnessFile.Read(witnessFile, out fault);
        if (fault is not null) return Refusals.Document(console, fault);
        var opened = RecordFolder.Open(folder);
        if (opened is not FolderResult<RecordFolder>.Opened { Folder: var record }) return Refusals.Folder(console, opened);
        try
        {
            return Tell(console, folder, record.Verify(witness), witness, asJson);
        }
        catch (RecordFault trouble)
        {
            return Refusals.Equipment(console, trouble.Message);
        }
    }

    private static int Tell(IAnsiConsole console, string folder, VerifyReport report, LedgerWitness? witness, bool asJson)
    {
        if (asJson)
        {
            JsonOutput.Write(console, new
            {
                whole = report.IsWhole,
                runs = report.Runs,
                events = report.Events,
                ledger = new { entries = report.Head.Count, hash = report.Head.Hash, fingerprint = report.Head.Fingerprint },
                findings = report.FindingCount,
                first = report.Findings.Select(finding => finding.ToString()),
                unfinished = report.Unfinished,
                witness = witness is null ? null : new { upTo = witness.UpTo, lines = witness.Lines.Length, fits = !IsContradicted(report) },
            });
        }
        else
        {
            foreach (var finding in report.Findings.Take(MostShown)) console.MarkupLineInterpolated($"[red]✗[/] {finding.ToString()}");
            if (report.FindingCount > MostShown) console.WriteLine($"… and {report.FindingCount - MostShown} more");
            foreach (var run in report.Unfinished) console.MarkupLineInterpolated($"[yellow]?[/] {run} has not ended: it is under way, or broke off");
            console.WriteLine(report.IsWhole
                ? $"✓ whole: {report.Runs} runs, {report.Events} events, {report.Head.Count} ledger entries in {Path.GetFullPath(folder)}"
                : $"✗ not whole: {report.FindingCount} findings in {report.Runs} runs, {report.Events} events");
            if (witness is not null && !IsContradicted(report)) console.WriteLine($"✓ the ledger is the one that the witness saw, up to entry {witness.UpTo}");
            console.WriteLine($"ledger fingerprint {report.Head.Fingerprint} (write it down elsewhere: it shows later that nothing was cut off)");
        }

        return report.IsWhole ? ExitCode.Pass : ExitCode.Fail;
    }

    private static bool IsContradicted(VerifyReport report) => report.Findings.Any(finding => finding.Kind == FindingKind.Witness);
}
