using System.Collections.Immutable;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Texts;

namespace EolSequencer.Model.Sequences;

/// <summary>One check or one act, complete: nothing is left to be looked up.</summary>
public sealed record Step : Node
{
    /// <summary>What it does.</summary>
    public required StepAction Action { get; init; }

    /// <summary>True when it gives a verdict of its own on the vehicle, for counting what a sequence judges.</summary>
    public bool IsJudged => Expect is not null || Serial is not null || Action is StepAction.Judge or StepAction.Await or StepAction.Ask { Until: not null };

    /// <summary>What the value must be; null when none is judged.</summary>
    public Expectation? Expect { get; init; }

    /// <summary>True: what <see cref="Expect"/> finds is recorded and counts as none.</summary>
    public bool ExpectIsRecordOnly { get; init; }

    /// <summary>The longest the step may take; a time. Null: no limit beyond those of the devices.</summary>
    public Operand? Within { get; init; }

    /// <summary>The window for the time from start (or <see cref="Since"/>) to the ending condition; null: not judged.</summary>
    public Expectation? Takes { get; init; }

    /// <summary>True: what <see cref="Takes"/> finds is recorded and counts as none.</summary>
    public bool TakesIsRecordOnly { get; init; }

    /// <summary>The condition from whose first true moment <see cref="Takes"/> counts; null: from the step's start.</summary>
    public Expression? Since { get; init; }

    /// <summary>How long the ending condition must stay true; a time. Null: the first moment is enough.</summary>
    public Operand? Lasting { get; init; }

    /// <summary>What happens after the last attempt when the counted verdict is worse than pass.</summary>
    public OnFail OnFail { get; init; } = OnFail.Continue;

    /// <summary>How much a miss matters.</summary>
    public StepClass Class { get; init; } = StepClass.Function;

    /// <summary>True: everything the step finds is recorded and counts as none.</summary>
    public bool RecordOnly { get; init; }

    /// <summary>How a value near an end of its window is decided.</summary>
    public Decision Decision { get; init; } = Decision.Simple;

    /// <summary>Expanded uncertainty (k = 2) of the value, in its unit; null when none is stated.</summary>
    public Operand? Uncertainty { get; init; }

    /// <summary>True: silent, refused and an invalid marker speak of the vehicle when the link answered somebody else.</summary>
    public bool MissingFails { get; init; }

    /// <summary>How often polled channels of its conditions are read; a time. Null: as the device kind says, else 100 ms.</summary>
    public Operand? Every { get; init; }

    /// <summary>What a plan counts for the step; null: what its action usually takes.</summary>
    public TimeSpan? Planned { get; init; }

    /// <summary>Its value is the serial of a part, which is kept with the vehicle and may be on no other; null: it is none.</summary>
    public SerialRule? Serial { get; init; }

    /// <summary>The requirements it shows to be met, by their numbers in the plant's own documents.</summary>
    public ImmutableArray<string> Requirements { get; init; } = [];

    /// <summary>What to look at first when it did not pass; null: nothing is said.</summary>
    public LocalText? Repair { get; init; }

    /// <summary>A text beside a measuring action; it ends nothing.</summary>
    public LocalText? Show { get; init; }

    /// <summary>A picture beside the prompt, relative to the plant's folder.</summary>
    public string? Picture { get; init; }

    /// <summary>What a failed judgement is called and where it may be.</summary>
    public NonconformityHint? Nonconformity { get; init; }
}

/// <summary>What happens after a step that did not pass.</summary>
public enum OnFail
{
    /// <summary>Go on with the next step.</summary>
    Continue,
    /// <summary>Leave the rest unreached and go to <c>always</c>.</summary>
    Stop,
    /// <summary>A person decides: again, go on or stop; three times at most.</summary>
    Ask,
}

/// <summary>The serial of a part is kept.</summary>
/// <param name="Part">What the part is called; null: as the step's id without loop values.</param>
public sealed record SerialRule(string? Part);

/// <summary>A catalogue code and the places a person may point at.</summary>
public sealed record NonconformityHint(string Code, ImmutableArray<string> Where);
