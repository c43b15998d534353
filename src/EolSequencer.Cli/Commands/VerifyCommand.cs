using System.CommandLine;
using EolSequencer.Cli.Output;
using EolSequencer.Model.Judging;
using EolSequencer.Records;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary><c>eol verify</c>: walks ledger, chains and seals of a data folder.</summary>
internal static class VerifyCommand
{
    private const int MostShown = 50;

    public static Command Make(IAnsiConsole console)
    {
        var data = DataOption.Make();
        var json = JsonOption.Make();
        var command = new Command("verify", "Walks ledger, chains and seals of a data folder; ends with 0 only when all is whole.") { data, json };
        command.SetAction(parsed => Run(console, parsed.GetRequiredValue(data), parsed.GetValue(json)));
        return command;
    }

    private static int Run(IAnsiConsole console, string folder, bool asJson)
    {
        if (RecordFolder.Open(folder) is not FolderResult<RecordFolder>.Opened { Folder: var record } opened)
        {
            return Refusals.Folder(console, RecordFolder.Open(folder));
        }

        var report = opened.Folder.Verify();
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
            });
        }
        else
        {
            foreach (var finding in report.Findings.Take(MostShown)) console.MarkupLineInterpolated($"[red]✗[/] {finding.ToString()}");
            if (report.FindingCount > MostShown) console.WriteLine($"… and {report.FindingCount - MostShown} more");
            foreach (var run in report.Unfinished) console.MarkupLineInterpolated($"[yellow]?[/] {run} has not ended: it is under way, or broke off");
            console.WriteLine(report.IsWhole
                ? $"✓ whole: {report.Runs} runs, {report.Events} events, {report.Head.Count} ledger entries in {record.Path}"
                : $"✗ not whole: {report.FindingCount} findings in {report.Runs} runs, {report.Events} events");
            console.WriteLine($"ledger fingerprint {report.Head.Fingerprint} (write it down elsewhere: it shows later that nothing was cut off)");
        }

        return report.IsWhole ? ExitCode.Pass : ExitCode.Fail;
    }
}
