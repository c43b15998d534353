using EolSequencer.Cli.Commands;
using EolSequencer.Cli.Output;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Records;
using EolSequencer.Records.Reading;
using EolSequencer.Rehearsal.Replay;
using EolSequencer.Rehearsal.Replay.WhatIf;
using Spectre.Console;

namespace EolSequencer.Cli.Replaying;

/// <summary>Judges many recorded runs again, and says how often what comes out otherwise.</summary>
internal sealed class WhatIfSession(IAnsiConsole console, ReplayChoices choices, WhatIfChoices which)
{
    private readonly IAnsiConsole _told = choices.AsJson ? ErrorConsole.Make() : console;

    public int Run()
    {
        if (DayRange.Parse(which.From, which.To, out var fault) is not { } days) return Refusals.Document(_told, fault!);
        if (choices.With is not { } file) return Refusals.Document(_told, "--with is missing: many runs are judged by a sequence");
        var opened = RecordFolder.Open(choices.Data);
        if (opened is not FolderResult<RecordFolder>.Opened { Folder: var record }) return Refusals.Folder(_told, opened);
        var load = SequenceLoader.Load(file, ExpressionsFolder.Open());
        DiagnosticLines.Write(_told, load.Diagnostics);
        if (!load.IsReady) return ExitCode.Document;

        var (from, until) = days.In(load.Plant!.Zone);
        var filter = new RunFilter
        {
            Mode = which.Rehearsals ? RunMode.Rehearsal : RunMode.Production,
            Station = which.Station,
            Sequence = load.Sequence!.Id,
            From = from,
            Until = until,
        };
        try
        {
            return Run(record, filter, new Revision(load.Sequence));
        }
        catch (RecordFault trouble)
        {
            return Refusals.Equipment(_told, trouble.Message);
        }
    }

    private int Run(RecordFolder record, RunFilter filter, Revision now)
    {
        var runs = record.CheckRuns();
        if (!choices.Unverified && runs.Findings is [var first, ..]) return Broken(first.ToString());
        var ids = runs.Select(filter);
        if (ids.IsEmpty) return Refusals.Document(_told, $"{record.Path} has no {(which.Rehearsals ? "rehearsal" : "production run")} of '{now.Sequence.Id}' in these days{(which.Rehearsals ? "" : "; --rehearsals asks for rehearsals")}");

        using var stopping = new StopSignals(_told);
        var result = new WhatIfRunner(runs, new RecordedRevisions(ExpressionsFolder.Open()), now).Run(ids, choices.Unverified, stopping.Token);
        if (stopping.IsAsked) return Refusals.Equipment(_told, "stopped before all runs were judged");
        var trouble = result.Trouble ?? runs.Findings.FirstOrDefault()?.ToString();
        if (trouble is not null && !choices.Unverified) return Broken(trouble);

        if (choices.AsJson) JsonOutput.Write(console, WhatIfJson.Of(result, now.Sequence, which, trouble));
        else WhatIfTable.Write(console, result, now.Sequence, which, trouble);
        return !result.Changed.IsEmpty ? ExitCode.Fail : result.ByStep.Values.Any(step => step.Undecidable > 0) ? ExitCode.Undecided : ExitCode.Pass;
    }

    private int Broken(string trouble) =>
        Refusals.Equipment(_told, $"the record is not as it was written: {trouble}; 'eol verify' says more, --unverified judges it all the same, marked");
}
