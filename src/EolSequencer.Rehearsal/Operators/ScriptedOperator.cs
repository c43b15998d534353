using System.Collections.Immutable;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Waiting;

namespace EolSequencer.Rehearsal.Operators;

/// <summary>
/// A person who answers the prompts that a script names as it says, and leaves all others to somebody else.
/// </summary>
/// <remarks>
/// <para>What the script names, only the script answers: nobody does, looks at or acknowledges it besides. An action that
/// it leaves unanswered is therefore never done. Cautions and the questions that follow a step have addresses of their
/// own (<see cref="OperatorScript.AddressOf"/>); without one they go to <paramref name="inner"/>.</para>
/// <para>How often a prompt was asked is counted for each step with its loop values, its further attempts and refused
/// answers included. An answer that the prompt does not take stops the run and says so.</para>
/// </remarks>
/// <param name="script">What is answered.</param>
/// <param name="inner">Who has all other prompts and shows the notices.</param>
/// <param name="time">The clock of the run.</param>
public sealed class ScriptedOperator(OperatorScript script, IOperator inner, TimeProvider time) : IOperator
{
    private readonly Dictionary<string, int> _asked = new(StringComparer.Ordinal);

    /// <inheritdoc/>
    public Task<Answer> AskAsync(Prompt prompt, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(prompt);
        return script.For(prompt) is { } answers ? AnswerAsync(prompt, Next(prompt, answers), cancel) : inner.AskAsync(prompt, cancel);
    }

    /// <inheritdoc/>
    public IDisposable Show(Notice notice) => inner.Show(notice);

    private ScriptedAnswer Next(Prompt prompt, ImmutableArray<ScriptedAnswer> answers)
    {
        var address = OperatorScript.AddressOf(prompt.Step, prompt.Kind);
        var before = _asked.GetValueOrDefault(address);
        _asked[address] = before + 1;
        return answers[Math.Min(before, answers.Length - 1)];
    }

    private async Task<Answer> AnswerAsync(Prompt prompt, ScriptedAnswer scripted, CancellationToken cancel)
    {
        if (scripted.Answer is not { } answer) return await NeverAsync(cancel);
        await Pause.ForAsync(scripted.After, time, cancel);
        return prompt.Kind.Takes(answer) ? answer : new Answer.Stop(Misfit(prompt));
    }

    private static async Task<Answer> NeverAsync(CancellationToken cancel)
    {
        var never = new TaskCompletionSource<Answer>(TaskCreationOptions.RunContinuationsAsynchronously);
        using var withdrawn = cancel.Register(() => never.TrySetCanceled(cancel));
        return await never.Task;
    }

    private string Misfit(Prompt prompt) => $"the operator script '{script.Id}' does not fit: '{prompt.Step}' {prompt.Kind.Wants()}";
}
