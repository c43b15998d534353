namespace EolSequencer.Model.Ports;

/// <summary>The person at the station, or who stands in for one.</summary>
public interface IOperator
{
    /// <summary>
    /// Puts a prompt up and completes with the answer. Several prompts of one <see cref="Prompt.Screen"/> may stand at
    /// once; one whose answer is refused comes again under its number. Cancelling withdraws the prompt (a device has confirmed it, or its time is over); the task then ends as
    /// cancelled and no answer to it counts any more.
    /// </summary>
    Task<Answer> AskAsync(Prompt prompt, CancellationToken cancel);

    /// <summary>Shows a text beside a measuring action until the returned handle is disposed.</summary>
    IDisposable Show(Notice notice);
}

/// <summary>A text beside an action that ends by itself.</summary>
public sealed record Notice(string Step, Texts.LocalText Text, Func<string, string?> Words);
