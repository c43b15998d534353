using EolSequencer.Engine.Actions;
using EolSequencer.Engine.Planning;
using EolSequencer.Engine.Waiting;
using EolSequencer.Model.Events;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Texts;
using EolSequencer.Model.Waiting;

namespace EolSequencer.Engine.Running;

/// <summary>Runs a step: its turn, its caution, its attempts, and what follows when it did not pass.</summary>
internal sealed class StepRunner(RunServices run)
{
    private const int MostDecisions = 3;
    private static readonly LocalText AgainOrOn = new([
        new("en", "Not passed. Again, go on, or stop?"),
        new("es", "No superado. ¿Repetir, seguir o parar?"),
    ]);

    private static readonly LocalText AgainOrLeave = new([
        new("en", "This had begun when the run broke off. Do it again, leave it and go on, or stop?"),
        new("es", "Esto había empezado cuando se interrumpió la prueba. ¿Repetirlo, dejarlo y seguir, o parar?"),
    ]);

    private readonly AttemptRunner _attempts = new(run);

    /// <param name="screen">The screen whose turn the caller holds; null: a prompt takes its own turn.</param>
    public ValueTask<Flow> RunAsync(PlannedStep planned, Halt halt, string? screen)
    {
        if (halt.IsRaised) return new(Flow.Stop);
        if (run.IsOver(planned)) return new(run.FlowBehind(planned));
        var step = planned.Step;
        var goesAhead = run.Past is null && step.OnlyIf is null && step.Caution is null && (screen is not null || step.Action.Prompt is null) && !DeviceTurns.AreNeeded(run, step);
        return goesAhead ? AttemptsAsync(planned, halt, screen) : InTurnAsync(planned, halt, screen);
    }

    private async ValueTask<Flow> InTurnAsync(PlannedStep planned, Halt halt, string? screen)
    {
        var step = planned.Step;
        try
        {
            if (step.OnlyIf is { } onlyIf && !await IsNeededAsync(planned, onlyIf, halt)) return Flow.GoOn;
            using var prompt = screen is null && (step.Action.Prompt is not null || step.Caution is not null)
                ? await run.Prompts.Turns.EnterAsync(halt.Token)
                : default;
            if (step.Caution is { } caution && !await AcknowledgeAsync(planned, caution, halt)) return Flow.Stop;
            if (IsHalfDone(planned) && !await IsDoneAgainAsync(planned, halt)) return halt.IsRaised ? Flow.Stop : run.FlowBehind(planned);
            using var devices = await DeviceTurns.EnterAsync(run, step, halt.Token);
            return await AttemptsAsync(planned, halt, screen);
        }
        catch (OperationCanceledException) when (halt.IsRaised)
        {
            return Flow.Stop; // Halted before its clock started: not reached.
        }
    }

    /// <summary>Shows a caution and waits until it is acknowledged; false when a person stopped the run instead.</summary>
    public async Task<bool> AcknowledgeAsync(PlannedNode node, LocalText caution, Halt halt)
    {
        var answer = await run.Prompts.AskAsync(node, 1, PromptKind.Caution, caution, prompt => prompt, halt.Token);
        if (answer is Answer.Confirmed) return true;
        halt.Raise(HaltKind.Stopped, answer is Answer.Stop stop ? stop.Reason : $"a caution was not acknowledged: {PromptDesk.NoneFitted}");
        return false;
    }

    private async ValueTask<Flow> AttemptsAsync(PlannedStep planned, Halt halt, string? screen)
    {
        var step = planned.Step;
        var retries = step.Retry?.Times ?? 0;
        for (var decisions = 0; ;)
        {
            var number = run.Results.NextAttempt(planned.Id);
            var (end, start) = await _attempts.RunAsync(planned, number, halt, screen);
            var (measured, counted) = StepVerdicts.Of(step, end);
            Record(planned, number, start, end, measured, counted);
            if (end is { ByPerson: true, Ending: Ending.Stopped }) halt.Raise(HaltKind.Stopped, end.Detail ?? "stopped by the operator");
            if (halt.IsRaised) return Flow.Stop;
            if (retries > 0 && !end.ByPerson && step.Retry!.On.Contains(measured))
            {
                retries--;
                if (step.Retry.Pause > TimeSpan.Zero && !await Pause.TryForAsync(step.Retry.Pause, run.Time, halt.Token)) return Flow.Stop;
                continue;
            }

            if (counted <= Verdict.Pass || step.OnFail == OnFail.Continue) return Flow.GoOn;
            if (step.OnFail == OnFail.Stop)
            {
                run.StopFor($"'{planned.Id}' did not pass, which stops the run");
                return Flow.Stop;
            }

            if (decisions++ == MostDecisions || !await IsWantedAgainAsync(planned, decisions, halt, screen)) return halt.IsRaised ? Flow.Stop : Flow.GoOn;
            retries = step.Retry?.Times ?? 0;
        }
    }

    /// <summary>Whether it is unknown how far an action came that must not simply be done again.</summary>
    private bool IsHalfDone(PlannedStep planned) => run.Past?.IsHalfDone(planned.Id) == true && planned.Step.Action is not (
        StepAction.SetTo { Target.IsRepeatable: true } or StepAction.Do { Target.IsRepeatable: true });

    /// <summary>Asks a person about an action that had begun when the run broke off; left alone, it is inconclusive.</summary>
    private async Task<bool> IsDoneAgainAsync(PlannedStep planned, Halt halt)
    {
        run.Past!.Settle(planned.Id);
        using var turn = planned.Step.Action.Prompt is null && planned.Step.Caution is null ? await run.Prompts.Turns.EnterAsync(halt.Token) : default;
        var answer = await run.Prompts.AskAsync(planned, 1, PromptKind.Decide, AgainOrLeave, prompt => prompt, halt.Token);
        if (answer is Answer.Again) return true;
        if (answer is Answer.Stop stop) halt.Raise(HaltKind.Stopped, stop.Reason);
        if (halt.IsRaised) return false;
        var left = new AttemptEnd(Ending.PassedOver, run.Now) { Detail = "it had begun when the run broke off, and was left as it was", ByPerson = true };
        Record(planned, run.Results.NextAttempt(planned.Id), run.Now, left, Verdict.Inconclusive, planned.Step.RecordOnly ? Verdict.None : Verdict.Inconclusive);
        return false;
    }

    /// <summary>Asks a person what to do about a step that did not pass.</summary>
    private async Task<bool> IsWantedAgainAsync(PlannedStep planned, int number, Halt halt, string? screen)
    {
        var answer = await run.Prompts.AskAsync(planned, number, PromptKind.Decide, AgainOrOn, prompt => prompt with { Screen = screen }, halt.Token);
        if (answer is Answer.Stop stop) halt.Raise(HaltKind.Stopped, stop.Reason);
        return answer is Answer.Again && !halt.IsRaised;
    }

    private void Record(PlannedStep planned, int number, long begun, AttemptEnd end, Verdict measured, Verdict counted)
    {
        var start = run.Log.MicrosecondsAt(begun);
        var took = run.Log.MicrosecondsAt(end.Stamp) - start;
        run.Log.Append((n, at) => new Judged
        {
            N = n,
            At = at,
            Step = planned.Id,
            Attempt = number,
            Start = start,
            Took = took,
            Criteria = end.Criteria,
            Measured = measured,
            Counted = counted,
            Cause = end.Cause,
            Detail = end.Detail,
            Requirements = planned.Step.Requirements,
            Repair = counted > Verdict.Pass ? planned.Step.Repair?.Fill(planned.WordFor) : null,
            Nonconformity = counted > Verdict.Pass ? planned.Step.Nonconformity?.Code : null,
            Picture = counted > Verdict.Pass ? planned.Step.Picture : null,
            Part = measured <= Verdict.Pass ? end.Part?.ToString() : null,
            Readings = end.Readings,
        });
        var time = TimeSpan.FromMicroseconds(took);
        run.Results.Judge(planned.Id, new ResultView(end.Value, counted, time));
        foreach (var (index, value) in end.ByIndex) run.Results.NoteIndex(planned.Id, index, new ResultView(value, counted, time));
    }

    /// <summary>Decides <c>only-if</c> at the step's turn; a reading it lacks is an error of the step, not a reason to leave it out.</summary>
    private async Task<bool> IsNeededAsync(PlannedStep planned, Expression onlyIf, Halt halt)
    {
        using var attempt = new Attempt(run, planned, 1, run.ScopeOf(planned), halt);
        var (truth, fault) = await OnlyIf.DecideAsync(attempt, onlyIf);
        if (truth == false)
        {
            run.Results.NoteNotNeeded(planned.Id);
            run.Log.Append((n, at) => new NotNeeded { N = n, At = at, Step = planned.Id });
        }
        else if (fault is not null)
        {
            Record(planned, run.Results.NextAttempt(planned.Id), attempt.Start, fault, Verdict.Error, planned.Step.RecordOnly ? Verdict.None : Verdict.Error);
        }

        return truth == true;
    }
}
