using EolSequencer.Engine.Running;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Texts;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Engine.Actions;

/// <summary>The actions that a person ends: <c>ask</c> without <c>until</c>, <c>judge</c>, <c>enter</c>, <c>scan</c>, <c>choose</c>.</summary>
internal static class PromptAction
{
    public static async ValueTask<AttemptEnd> RunAsync(Attempt attempt, string? screen)
    {
        var kind = attempt.Step.Action.Prompt!.Value;
        var text = attempt.Step.Action switch
        {
            StepAction.Ask ask => ask.Text,
            StepAction.Judge judge => judge.Text,
            StepAction.Enter enter => enter.Text,
            StepAction.Scan scan => scan.Text,
            StepAction.Choose choose => choose.Text,
            var other => throw new InvalidOperationException($"{other.GetType().Name} puts up no prompt"),
        };
        if (await AskAsync(attempt, kind, text, screen, attempt.Ends) is { } answer) return Ended(attempt, answer);
        return attempt.Ends.IsCancellationRequested
            ? attempt.Cut(() => NoAnswer(attempt, $"no answer within {Attempt.Text(attempt.Within!.Value)}"))
            : NoAnswer(attempt, PromptDesk.NoneFitted);
    }

    /// <summary>Puts up the prompt of a step.</summary>
    public static Task<Answer?> AskAsync(Attempt attempt, PromptKind kind, LocalText text, string? screen, CancellationToken cancel) =>
        attempt.Run.Prompts.AskAsync(
            attempt.Planned,
            attempt.Number,
            kind,
            text,
            prompt => prompt with
            {
                Screen = screen,
                Within = attempt.Within,
                Picture = attempt.Step.Picture,
                Nonconformity = attempt.Step.Nonconformity,
                Class = attempt.Step.Class,
                Shape = attempt.Step.Action is StepAction.Enter enter ? enter.Shape : null,
                Choices = attempt.Step.Action is StepAction.Choose choose ? choose.Among : [],
            },
            cancel,
            answer => Misfit(attempt, answer));

    private static AttemptEnd NoAnswer(Attempt attempt, string why) => new(Ending.NoAnswer, attempt.Run.Now) { Detail = why };

    /// <summary>What an answer means for the step.</summary>
    public static AttemptEnd Ended(Attempt attempt, Answer answer)
    {
        var now = attempt.Run.Now;
        switch (answer)
        {
            case Answer.Confirmed: return new AttemptEnd(Ending.Confirmed, now);
            case Answer.Ok: return new AttemptEnd(Ending.AnsweredOk, now);
            case Answer.NotOk notOk: return new AttemptEnd(Ending.AnsweredNotOk, now) { Detail = notOk.Where };
            case Answer.Text text: return attempt.Found(ValueOf(attempt, text.Value)!, now);
            case Answer.PassedOver passed:
                attempt.Run.Log.Append((n, at) => new PassedOver { N = n, At = at, Step = attempt.Planned.Id, Reason = passed.Reason, Person = passed.Person });
                return new AttemptEnd(Ending.PassedOver, now) { Detail = $"passed over: {passed.Reason}", ByPerson = true };
            case Answer.Stop stop: return new AttemptEnd(Ending.Stopped, now) { Detail = stop.Reason, ByPerson = true };
            default: throw new InvalidOperationException($"{answer.GetType().Name} answers no prompt of a step");
        }
    }

    /// <summary>Why a text does not fit; null when it does.</summary>
    private static string? Misfit(Attempt attempt, Answer answer)
    {
        if (answer is not Answer.Text text) return null;
        return attempt.Step.Action switch
        {
            StepAction.Choose choose when !choose.Among.Contains(text.Value) => $"one of {string.Join(", ", choose.Among)} is wanted",
            StepAction.Enter when ValueOf(attempt, text.Value) is null => "a number with a point and no thousands mark is wanted",
            _ => null,
        };
    }

    private static Value? ValueOf(Attempt attempt, string text) => attempt.Step.Action switch
    {
        StepAction.Scan => new TextValue(VinLabel.Strip(text)),
        StepAction.Enter { Shape: { Kind: ValueKind.Number } shape } =>
            NumberText.TryParse(text.Trim(), out var number) ? new NumberValue(number, shape.Unit) : null,
        _ => new TextValue(text),
    };
}
