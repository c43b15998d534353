using System.Collections.Immutable;

namespace EolSequencer.Model.Ports;

/// <summary>What a person is to answer at some prompts, written down beforehand.</summary>
/// <param name="Id">The script's id.</param>
/// <param name="Answers">
/// By address (see <see cref="AddressOf"/>) the answers in the order in which the prompt is asked, at least one; the last
/// one repeats.
/// </param>
public sealed record OperatorScript(string Id, ImmutableSortedDictionary<string, ImmutableArray<ScriptedAnswer>> Answers)
{
    /// <summary>Behind the id of a step or group: its caution.</summary>
    public const char CautionMark = '!';

    /// <summary>Behind the id of a step: the question whether to do it again, go on or stop.</summary>
    public const char DecisionMark = '?';

    /// <summary>
    /// How a script names a prompt: the id of its step, which stands for the step's own prompt only; a caution and the
    /// question that follows a step have a mark behind it, so that no script acknowledges a caution by chance.
    /// </summary>
    /// <param name="step">Full id with loop values, or the id without them.</param>
    public static string AddressOf(string step, PromptKind kind) => kind switch
    {
        PromptKind.Caution => step + CautionMark,
        PromptKind.Decide => step + DecisionMark,
        _ => step,
    };

    /// <summary>The answers to a prompt: those of the full id, else those of the id without loop values; null when the script names neither.</summary>
    public ImmutableArray<ScriptedAnswer>? For(Prompt prompt) =>
        Answers.TryGetValue(AddressOf(prompt.Step, prompt.Kind), out var own) ? own
        : Answers.TryGetValue(AddressOf(prompt.StepPattern, prompt.Kind), out var common) ? common
        : null;
}
