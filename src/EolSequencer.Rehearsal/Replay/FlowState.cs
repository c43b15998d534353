using EolSequencer.Engine.Planning;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Rehearsal.Replay;

/// <summary>What follows an attempt of a step by its <c>retry</c> and <c>on-fail</c>.</summary>
internal sealed class FlowState(Step step)
{
    private int _retries = step.Retry?.Times ?? 0;

    /// <summary>What comes next; null before the first attempt.</summary>
    public FlowStep? Next { get; private set; }

    /// <summary>True when another attempt belongs to the step.</summary>
    public bool WantsAnother => Next is null or FlowStep.Again or FlowStep.AskPerson;

    /// <summary>An attempt has been judged.</summary>
    /// <param name="byPerson">A person ended it, so it is not tried again.</param>
    public void Judged(Verdict measured, Verdict counted, bool byPerson)
    {
        if (Next is FlowStep.AskPerson) _retries = step.Retry?.Times ?? 0;
        if (_retries > 0 && !byPerson && step.Retry!.On.Contains(measured))
        {
            _retries--;
            Next = FlowStep.Again;
        }
        else
        {
            Next = counted <= Verdict.Pass || step.OnFail == OnFail.Continue ? FlowStep.GoOn
                : step.OnFail == OnFail.Stop ? FlowStep.Stop
                : FlowStep.AskPerson;
        }
    }
}

/// <summary>What comes behind an attempt.</summary>
internal enum FlowStep
{
    GoOn,
    Again,

    /// <summary>A person says whether it is done again.</summary>
    AskPerson,

    /// <summary>The run stops.</summary>
    Stop,
}
