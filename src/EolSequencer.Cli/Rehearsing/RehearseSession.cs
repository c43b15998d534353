using EolSequencer.Cli.Commands;
using EolSequencer.Cli.Output;
using EolSequencer.Model.Judging;
using EolSequencer.Rehearsal.Campaigns;
using Spectre.Console;

namespace EolSequencer.Cli.Rehearsing;

/// <summary>Runs a campaign, or goes on with one, and says what it has shown.</summary>
/// <param name="told">Where progress and trouble go; not where a program reads the result.</param>
internal sealed class RehearseSession(IAnsiConsole console, IAnsiConsole told, RehearseChoices choices)
{
    public int Run()
    {
        if (choices.Fault is { } fault) return Refusals.Document(told, fault);
        if (choices.Report is { } path)
        {
            var (kept, why) = CampaignFile.Open(path);
            if (kept is null) return Refusals.Document(told, why!);
            using (kept) return Tell(kept, path);
        }

        if (new CampaignPreparation(told, choices).Prepare() is not { } ready) return ExitCode.Document;
        using (ready.File)
        {
            var isWhole = RunRest(ready);
            var code = Tell(ready.File, ready.Path);
            return isWhole || code != ExitCode.Pass ? code : ExitCode.Undecided;
        }
    }

    private bool RunRest(ReadyCampaign ready)
    {
        var done = ready.File.Done;
        var rest = ready.Plan.Jobs.Where(job => !done.Contains(job.Number)).ToList();
        if (done.Count > 0) told.WriteLine($"{ready.Path}: {done.Count} of {ready.Plan.Jobs.Count} runs are there, going on with the rest");
        using var stopping = new StopSignals(told);
        var progress = new CampaignProgress(told, done.Count, ready.Plan.Jobs.Count);
        foreach (var part in ready.Runner.Run(rest, choices.Cores, stopping.Token).Chunk(CampaignProgress.KeptTogether))
        {
            ready.File.Add(part);
            progress.Show(part);
        }

        progress.End();
        return ready.File.Done.Count == ready.Plan.Jobs.Count;
    }

    private int Tell(CampaignFile file, string path)
    {
        var findings = CampaignReader.Read(file);
        var again = new RunsAgain(path, findings.Head.Command);
        if (choices.Html is { } page)
        {
            if (TextFile.TryWrite(page, CampaignPage.Of(findings, again)) is { } trouble) return Refusals.Document(told, trouble);
            told.WriteLine($"{page}: the findings as a page");
        }

        if (choices.AsJson) JsonOutput.Write(console, CampaignJson.Of(findings, again));
        else CampaignTables.Write(console, findings, again);
        if (again.WriteOrders(file) is { } unwritten) return Refusals.Document(told, unwritten);
        return findings.IsGood ? ExitCode.Pass : ExitCode.Fail;
    }
}
