namespace EolSequencer.Model.ExpectedResults;

/// <summary>What is expected of the steps that a test does not name.</summary>
public enum OtherSteps
{
    /// <summary>Each was reached, and none counts as worse than passed.</summary>
    Pass,

    /// <summary>None counts as worse than passed; some may not have been reached.</summary>
    PassOrNotReached,

    /// <summary>Anything.</summary>
    Any,
}
