namespace EolSequencer.Model.Ports;

/// <summary>Which answers a kind of prompt takes.</summary>
public static class AnswerFit
{
    /// <summary>
    /// Whether such an answer means something there. Stop fits everywhere, passing over fits every prompt of a step.
    /// Whether a text is a number or one of the words offered is not asked.
    /// </summary>
    public static bool Takes(this PromptKind kind, Answer answer) => answer switch
    {
        Answer.Stop => true,
        Answer.PassedOver => kind is not (PromptKind.Caution or PromptKind.Decide),
        Answer.Confirmed => kind is PromptKind.Confirm or PromptKind.Caution,
        Answer.Ok or Answer.NotOk => kind is PromptKind.Judge,
        Answer.Text => kind is PromptKind.Enter or PromptKind.Scan or PromptKind.Choose,
        Answer.Again or Answer.GoOn => kind is PromptKind.Decide,
        _ => throw new ArgumentOutOfRangeException(nameof(answer), answer, "unknown answer"),
    };

    /// <summary>What such a prompt wants, for people; goes on after "the prompt".</summary>
    public static string Wants(this PromptKind kind) => kind switch
    {
        PromptKind.Act => "is ended by a device, so a person can only stop, pass it over or answer nothing",
        PromptKind.Confirm => "wants to be confirmed",
        PromptKind.Judge => "wants ok or not-ok",
        PromptKind.Caution => "is a caution to be confirmed",
        PromptKind.Decide => "wants again, go-on or stop",
        _ => "wants a text to be typed",
    };
}
