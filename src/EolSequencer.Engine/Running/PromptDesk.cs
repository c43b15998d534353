using EolSequencer.Engine.Planning;
using EolSequencer.Model.Events;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Texts;
using EolSequencer.Model.Waiting;

namespace EolSequencer.Engine.Running;

/// <summary>Numbers the prompts of a run, shows one screen at a time and writes down what was asked and answered.</summary>
/// <param name="number">Number of the last prompt; 0 when none came before.</param>
internal sealed class PromptDesk(IOperator @operator, EventLog log, int number = 0)
{
    /// <summary>An answer that does not fit is refused and the prompt stays, through this many at most.</summary>
    private const int MostRefusals = 20;

    /// <summary>What a step says of a prompt that got no answer it can take.</summary>
    public static string NoneFitted { get; } = $"{MostRefusals} answers did not fit";

    private int _number = number;

    /// <summary>Whose prompt, or screen of prompts, may be up.</summary>
    public Turnstile Turns { get; } = new();

    /// <summary>Puts a prompt up and waits for an answer that fits; cancelling withdraws it.</summary>
    /// <param name="misfit">Why an answer of the right kind does not fit; null when it does.</param>
    /// <returns>The answer; null when the prompt was withdrawn, or when one after the other did not fit (<see cref="NoneFitted"/>).</returns>
    public async Task<Answer?> AskAsync(
        PlannedNode node, int attempt, PromptKind kind, LocalText text, Func<Prompt, Prompt> more, CancellationToken cancel, Func<Answer, string?>? misfit = null)
    {
        var number = ++_number;
        var prompt = more(new Prompt
        {
            Number = number,
            Step = node.Id,
            StepPattern = node.Pattern,
            Attempt = attempt,
            Kind = kind,
            Text = text,
            Words = node.WordFor,
            ValueOf = name => node.Arguments.Find(name)?.ToString(),
            OperatorPlace = node.OperatorPlace,
        });
        log.Append((n, at) => new Asked { N = n, At = at, Step = node.Id, Attempt = attempt, Prompt = number, Kind = kind });
        for (var refusals = 0; refusals < MostRefusals; refusals++)
        {
            var asked = @operator.AskAsync(prompt, cancel);
            await ((Task)asked).ConfigureAwait(ConfigureAwaitOptions.ContinueOnCapturedContext | ConfigureAwaitOptions.SuppressThrowing);
            if (cancel.IsCancellationRequested) return null; // Most prompts end like this: a device saw it done.
            var answer = await asked;
            var (word, detail) = Describe(answer);
            var reason = kind.Takes(answer) ? misfit?.Invoke(answer) : $"the prompt {kind.Wants()}";
            if (reason is null)
            {
                log.Append((n, at) => new Answered { N = n, At = at, Step = node.Id, Prompt = number, Answer = word, Detail = detail, Person = answer.Person });
                return answer;
            }

            log.Append((n, at) => new AnswerRefused { N = n, At = at, Step = node.Id, Prompt = number, Answer = word, Reason = reason });
            prompt = prompt with { Refused = reason };
        }

        return null;
    }

    private static (string Word, string? Detail) Describe(Answer answer) => answer switch
    {
        Answer.Confirmed => ("confirmed", null),
        Answer.Ok => ("ok", null),
        Answer.NotOk notOk => ("not ok", notOk.Where),
        Answer.Text text => (text.Value, null),
        Answer.PassedOver passed => ("passed over", passed.Reason),
        Answer.Stop stop => ("stop", stop.Reason),
        Answer.Again => ("again", null),
        Answer.GoOn => ("go on", null),
        _ => throw new InvalidOperationException($"unknown answer {answer}"),
    };
}
