using System.Collections.Immutable;
using EolSequencer.Engine.Judging;
using EolSequencer.Engine.Planning;
using EolSequencer.Model.Events;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Engine.Resuming;

/// <summary>What a run that broke off had come to, as its events tell it, in the words of its plan.</summary>
internal sealed class RunPast
{
    private readonly Plan _plan;
    private readonly ResultBook _results;
    private readonly Reopening _reopening;
    private readonly Dictionary<string, PlannedStep> _steps;
    private readonly HashSet<string> _begun = new(StringComparer.Ordinal);

    /// <param name="results">Is filled with what there was.</param>
    public RunPast(Plan plan, ImmutableArray<RunEvent> events, ResultBook results)
    {
        (_plan, _results, Events) = (plan, results, events);
        _reopening = new Reopening(plan, results);
        _steps = Plan.StepsOf(plan.Prepare, plan.Steps, plan.Always, plan.AfterVerdict).ToDictionary(step => step.Id, StringComparer.Ordinal);
        foreach (var next in events) Add(next);
    }

    /// <summary>In order; the first is that of the run.</summary>
    public ImmutableArray<RunEvent> Events { get; }

    public RunBegun Begun => (RunBegun)Events[0];

    /// <summary>Number of the last prompt.</summary>
    public int Prompts { get; private set; }

    /// <summary>Why the run had been stopped before it broke off; null when it had not.</summary>
    public string? Stopped { get; private set; }

    /// <summary>Whether the conditions of the run were read.</summary>
    public bool HasConditions { get; private set; }

    /// <summary>Microseconds since the run began that it is by now: never before its last event, however the clock was set.</summary>
    public long At(DateTimeOffset now) => Math.Max(Events[^1].At, (long)(now - Begun.Wall).TotalMicroseconds);

    /// <summary>Whether a step had begun to act and nobody knows how far it came.</summary>
    public bool IsHalfDone(string step) => _begun.Contains(step);

    /// <summary>It is decided what becomes of it: somebody was asked, or it is done again whatever came before.</summary>
    public void Settle(string step) => _begun.Remove(step);

    /// <summary>Opens again what does not go on where it was: prepare, what needs continuity, what was to be tried again.</summary>
    public void Reopen()
    {
        _reopening.Run();
        foreach (var step in Plan.StepsOf(_plan.Prepare, _plan.Always, _plan.AfterVerdict)) Settle(step.Id);
    }

    private void Add(RunEvent next)
    {
        switch (next)
        {
            case Asked asked: Prompts = Math.Max(Prompts, asked.Prompt); break;
            case Begun begun: _begun.Add(begun.Step); break;
            case NotNeeded notNeeded: _results.NoteNotNeeded(notNeeded.Step); break;
            case ConditionsRead: HasConditions = true; break;
            case Stopped stopped: Stopped ??= stopped.Reason; break;
            case SeriesRecorded { Capture: not null } trace: AddTrace(trace); break;
            case Judged judged: Add(judged); break;
            case Resumed { For: ResumedFor.Steps }: Reopen(); break;
        }
    }

    private void Add(Judged judged)
    {
        _begun.Remove(judged.Step);
        if (!_steps.TryGetValue(judged.Step, out var planned)) return;
        while (_results.NextAttempt(judged.Step) < judged.Attempt) { }
        var took = TimeSpan.FromMicroseconds(judged.Took);
        var kind = RecordedValue.ShapeOf(planned.Step.Action).Kind;
        foreach (var criterion in judged.Criteria.Where(criterion => planned.Indexes.Contains(criterion.Of)))
        {
            _results.NoteIndex(judged.Step, criterion.Of, new ResultView(RecordedValue.Of(criterion, kind), judged.Counted, took));
        }

        var own = judged.Criteria.FirstOrDefault(criterion => criterion.Of.Length == 0);
        _results.Judge(judged.Step, new ResultView(own is null ? null : RecordedValue.Of(own, kind), judged.Counted, took));
        _reopening.Note(planned, judged);
    }

    private void AddTrace(SeriesRecorded series)
    {
        var capture = Plan.NodesOf(_plan.Prepare, _plan.Steps, _plan.Always)
            .Where(node => node.Id == series.Step).SelectMany(node => node.Captures).FirstOrDefault(capture => capture.Name == series.Channel);
        if (capture is not null) _results.NoteTrace(series.Step, RecordedSeries.Trace(series, capture.Channel.Shape));
    }
}
