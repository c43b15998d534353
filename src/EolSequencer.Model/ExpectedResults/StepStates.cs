using EolSequencer.Model.Judging;

namespace EolSequencer.Model.ExpectedResults;

/// <summary>Words of what becomes of steps.</summary>
public static class StepStates
{
    /// <summary>The word that files and messages use.</summary>
    public static string Word(this StepState state) => state switch
    {
        StepState.None => "none",
        StepState.Pass => "pass",
        StepState.Inconclusive => "inconclusive",
        StepState.Fail => "fail",
        StepState.Error => "error",
        StepState.NotNeeded => "not-needed",
        StepState.NotApplicable => "not-applicable",
        StepState.NotReached => "not-reached",
        StepState.LeftOut => "left out",
        _ => throw new ArgumentOutOfRangeException(nameof(state), state, "there are nine states"),
    };

    /// <summary>The state of a step that was judged.</summary>
    public static StepState Of(Verdict counted) => counted switch
    {
        Verdict.None => StepState.None,
        Verdict.Pass => StepState.Pass,
        Verdict.Inconclusive => StepState.Inconclusive,
        Verdict.Fail => StepState.Fail,
        Verdict.Error => StepState.Error,
        _ => throw new ArgumentOutOfRangeException(nameof(counted), counted, "there are five verdicts"),
    };

    /// <summary>True: the step ran, so that there are times and perhaps a value.</summary>
    public static bool HasRun(this StepState state) => state <= StepState.Error;
}
