using EolSequencer.Model.Ports;

namespace EolSequencer.Model.Events;

/// <summary>A prompt went up.</summary>
public sealed record Asked : RunEvent
{
    public required string Step { get; init; }
    public required int Attempt { get; init; }
    public required int Prompt { get; init; }
    public required PromptKind Kind { get; init; }
}

/// <summary>A person answered a prompt (an acknowledged caution included).</summary>
public sealed record Answered : RunEvent
{
    public required string Step { get; init; }
    public required int Prompt { get; init; }

    /// <summary>The answer as a word: confirmed, ok, not ok, the text entered, passed over, stop, again, go on.</summary>
    public required string Answer { get; init; }

    /// <summary>Where, or the reason; null when nothing was said.</summary>
    public string? Detail { get; init; }
    public string? Person { get; init; }
}

/// <summary>An answer did not fit its prompt; the prompt stays.</summary>
public sealed record AnswerRefused : RunEvent
{
    public required string Step { get; init; }
    public required int Prompt { get; init; }

    /// <summary>What was answered, in the words of <see cref="Answered"/>.</summary>
    public required string Answer { get; init; }

    /// <summary>Why it does not fit.</summary>
    public required string Reason { get; init; }
}
