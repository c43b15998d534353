namespace EolSequencer.Wire.Uds;

/// <summary>What a message is to a request.</summary>
public enum AnswerKind
{
    /// <summary>Not its answer: of an earlier request, of another service, or no message of the protocol.</summary>
    Stray,

    /// <summary>Its positive response.</summary>
    Positive,

    /// <summary>Its refusal.</summary>
    Negative,

    /// <summary>Code 78: no answer yet; from now on P2* counts.</summary>
    Pending,

    /// <summary>Code 21: the request was not begun and may be repeated.</summary>
    Busy,
}
