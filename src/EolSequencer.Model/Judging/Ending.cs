namespace EolSequencer.Model.Judging;

/// <summary>How a step came to its end.</summary>
public enum Ending
{
    /// <summary>The person, or the device that acted, confirms.</summary>
    Confirmed,

    /// <summary>The ending condition was true, for as long as <c>lasting</c> says.</summary>
    ConditionTrue,

    /// <summary>The limit passed and the condition was false.</summary>
    ConditionFalseAtLimit,

    /// <summary>The limit passed and nobody could say whether the condition was true.</summary>
    ConditionUnknownAtLimit,

    AnsweredOk,
    AnsweredNotOk,

    /// <summary>The limit passed without a person's answer.</summary>
    NoAnswer,

    /// <summary>A value is there and an expectation judges it.</summary>
    ValueJudged,

    /// <summary>A value is there and nothing is expected of it.</summary>
    ValueTaken,

    /// <summary>No value, or no confirmation: link down, silent, refused and the other causes.</summary>
    Missing,

    /// <summary>The time of a <c>wait</c> is over.</summary>
    TimeOver,

    /// <summary>A <c>require</c> condition was lost.</summary>
    Lost,

    /// <summary>A person stopped the run, or another branch did.</summary>
    Stopped,

    /// <summary>The run ended before the step's turn.</summary>
    NotReached,

    /// <summary>A person with that right passed it over and said why.</summary>
    PassedOver,

    /// <summary>An expression of the step has no value.</summary>
    ExpressionFault,
}
