namespace EolSequencer.Model.Judging;

/// <summary>What decides the measured verdict of a step that ended in a certain way.</summary>
public enum VerdictRule
{
    None,
    Pass,
    Inconclusive,
    Fail,
    Error,

    /// <summary>The worst verdict of the step's criteria.</summary>
    ByExpectation,

    /// <summary>As a missing reading: error, or fail where <c>if-missing: fail</c> holds.</summary>
    AsMissing,

    /// <summary>No step of this kind ends like this.</summary>
    CannotHappen,
}
