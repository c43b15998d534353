using EolSequencer.Cli.Commands;
using EolSequencer.Cli.Output;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Events;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Records;
using EolSequencer.Records.Reading;
using EolSequencer.Rehearsal.Replay;
using Spectre.Console;

namespace EolSequencer.Cli.Replaying;

/// <summary>Judges one recorded run again, and says what comes out otherwise.</summary>
internal sealed class ReplaySession(IAnsiConsole console, ReplayChoices choices)
{
    private readonly IAnsiConsole _told = choices.AsJson ? ErrorConsole.Make() : console;

    public int Run(string id)
    {
        var opened = RecordFolder.Open(choices.Data);
        if (opened is not FolderResult<RecordFolder>.Opened { Folder: var record }) return Refusals.Folder(_told, opened);
        if (!TrySequence(out var sequence)) return ExitCode.Document;
        try
        {
            return Run(id, record, sequence);
        }
        catch (RecordFault fault)
        {
            return Refusals.Equipment(_told, fault.Message);
        }
    }

    /// <summary>The sequence to judge by; null: the recorded one. False: it has errors, which have been told.</summary>
    private bool TrySequence(out CheckedSequence? sequence)
    {
        sequence = null;
        if (choices.With is not { } file) return true;
        var load = SequenceLoader.Load(file, ExpressionsFolder.Open());
        DiagnosticLines.Write(_told, load.Diagnostics);
        sequence = load.Sequence;
        return load.IsReady;
    }

    private int Run(string id, RecordFolder record, CheckedSequence? sequence)
    {
        var runs = record.CheckRuns();
        using var reader = runs.OpenReader();
        if (reader.Read(id) is not { } run) return Refusals.Document(_told, $"{record.Path} has no run '{id}'; 'eol show' and 'eol show --rehearsals' list them");
        var trouble = run.Trouble ?? runs.Findings.FirstOrDefault()?.ToString();
        if (run.Events.IsEmpty) return Refusals.Equipment(_told, $"run {id}: {trouble}; 'eol verify' says more");
        if (trouble is not null && !choices.Unverified) return Refusals.Equipment(_told, $"the record is not as it was written: {trouble}; --unverified judges it all the same, marked");

        var begun = (RunBegun)run.Events[0];
        var old = new RecordedRevisions(ExpressionsFolder.Open()).Of(begun);
        if (old.Revision is null)
        {
            DiagnosticLines.Write(_told, old.Diagnostics);
            return Refusals.Document(_told, $"the texts that run {id} was made with are not accepted by this version");
        }

        var now = sequence is null ? old.Revision : new Revision(sequence);
        if (ReplayFit.Misfit(now.Sequence, begun) is { } misfit) return Refusals.Document(_told, misfit);
        try
        {
            return Tell(RunReplay.Of(old.Revision, now, run.Events), now.Sequence, trouble);
        }
        catch (ExpressionFault fault)
        {
            return Refusals.Document(_told, $"what '{now.Sequence.Id}' asks of the order of run {id} cannot be answered: {fault.Message}");
        }
    }

    private int Tell(ReplayedRun run, CheckedSequence sequence, string? trouble)
    {
        if (choices.AsJson) JsonOutput.Write(console, ReplayJson.Of(run, sequence, trouble));
        else ReplayTable.Write(console, run, sequence, trouble);
        return run.Steps.Any(step => step.IsChanged) ? ExitCode.Fail : run.Undecidable > 0 ? ExitCode.Undecided : ExitCode.Pass;
    }
}
