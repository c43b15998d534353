namespace EolSequencer.Model.Judging;

/// <summary>What a step does, as far as its verdict depends on it.</summary>
public enum ActionKind
{
    /// <summary><c>ask</c> that a person confirms.</summary>
    Ask,

    /// <summary><c>ask</c> with <c>until</c>: a device confirms it.</summary>
    AskUntil,

    Judge,
    Enter,
    Choose,
    Scan,
    Read,
    Sample,
    Await,
    Wait,
    Set,
    Do,
    Compute,
}
