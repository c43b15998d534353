using System.Collections.Immutable;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Texts;
using EolSequencer.Model.Values;

namespace EolSequencer.Model.Ports;

/// <summary>One instruction for the operator.</summary>
public sealed record Prompt
{
    /// <summary>Counts the prompts of a run from 1; an answer names it, so a late one never answers the next.</summary>
    public required int Number { get; init; }

    /// <summary>Full id of the step, with loop values.</summary>
    public required string Step { get; init; }

    /// <summary>The id without loop values, the same for every instance: <c>doors.ajar</c>.</summary>
    public required string StepPattern { get; init; }

    /// <summary>Which attempt of the step, from 1.</summary>
    public required int Attempt { get; init; }

    /// <summary>What kind of answer is wanted.</summary>
    public required PromptKind Kind { get; init; }

    /// <summary>The instruction, not yet filled in.</summary>
    public required LocalText Text { get; init; }

    /// <summary>How the value of a loop name or parameter reads, for the text's braces; by language code, then name.</summary>
    public required Func<string, string, string?> Words { get; init; }

    /// <summary>The value of a loop name or parameter as the sequence knows it, such as <c>front_left</c>.</summary>
    public required Func<string, string?> ValueOf { get; init; }

    /// <summary>Prompts with the same screen stand together; null: alone.</summary>
    public string? Screen { get; init; }

    /// <summary>Where to stand; an id of the plant's places.</summary>
    public string? OperatorPlace { get; init; }

    /// <summary>A picture relative to the plant's folder.</summary>
    public string? Picture { get; init; }

    /// <summary>Time left when the prompt goes up; null: no limit.</summary>
    public TimeSpan? Within { get; init; }

    /// <summary>Type and unit of the value to enter.</summary>
    public ValueShape? Shape { get; init; }

    /// <summary>The words to choose from; empty otherwise.</summary>
    public ImmutableArray<string> Choices { get; init; } = [];

    /// <summary>Why the answer before this was refused; null: none was.</summary>
    public string? Refused { get; init; }

    /// <summary>What a failed judgement is called.</summary>
    public NonconformityHint? Nonconformity { get; init; }

    /// <summary>How much a miss matters.</summary>
    public Judging.StepClass Class { get; init; }

    /// <summary>The text in a language with all names filled in.</summary>
    public string TextFor(string language) => Text.Fill(language, name => Words(language, name));
}

/// <summary>What kind of answer a prompt wants.</summary>
public enum PromptKind
{
    /// <summary>Do something; a device sees it. An answer only stops or passes over.</summary>
    Act,
    /// <summary>Do something and confirm it.</summary>
    Confirm,
    /// <summary>In order or not.</summary>
    Judge,
    /// <summary>Type a value.</summary>
    Enter,
    /// <summary>Scan a code.</summary>
    Scan,
    /// <summary>Pick one of several.</summary>
    Choose,
    /// <summary>Read a caution and acknowledge it.</summary>
    Caution,
    /// <summary>A step did not pass: again, go on or stop.</summary>
    Decide,
}
