namespace EolSequencer.Model.ExpectedResults;

/// <summary>What a run made of a step: its counted verdict, or why it has none.</summary>
public enum StepState
{
    /// <summary>It ran and judged nothing that counts.</summary>
    None,
    Pass,
    Inconclusive,
    Fail,
    Error,

    /// <summary>Its <c>only-if</c>, or that of a group around it, was false at its turn.</summary>
    NotNeeded,

    /// <summary>Its <c>when</c> is false for this vehicle, or the vehicle lacks the loop value.</summary>
    NotApplicable,

    /// <summary>The run ended before its turn.</summary>
    NotReached,

    /// <summary>Only other steps were asked for.</summary>
    LeftOut,
}
