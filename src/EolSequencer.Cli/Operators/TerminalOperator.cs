using EolSequencer.Model.Plants;
using EolSequencer.Model.Ports;
using EolSequencer.Station.Time;
using Spectre.Console;

namespace EolSequencer.Cli.Operators;

/// <summary>
/// You as the operator: prompts are printed, lines typed are answers. A line that begins with a prompt's number and a
/// colon answers that prompt, any other the one that has stood longest.
/// </summary>
/// <param name="plant">Says how places read.</param>
/// <param name="hands">The simulated person, who does on a simulated vehicle what you tell with a single point; null on a real one.</param>
internal sealed class TerminalOperator(IAnsiConsole console, StationLoop loop, TextReader input, Plant plant, string language, IOperator? hands) : IOperator
{
    private readonly List<Standing> _standing = [];
    private bool _reads;

    public async Task<Answer> AskAsync(Prompt prompt, CancellationToken cancel)
    {
        ReadLines();
        var standing = new Standing(prompt, cancel);
        _standing.Add(standing);
        Print(prompt);
        using var withdrawn = cancel.Register(() => standing.Answer.TrySetCanceled(cancel));
        try
        {
            return await standing.Answer.Task;
        }
        finally
        {
            _standing.Remove(standing);
            if (cancel.IsCancellationRequested && prompt.Kind == PromptKind.Act) console.MarkupLineInterpolated($"[grey][[{prompt.Number}]] ended[/]");
        }
    }

    public IDisposable Show(Notice notice)
    {
        console.MarkupLineInterpolated($"[grey]{notice.Text.Fill(language, notice.Words)}[/]");
        return new Nothing();
    }

    private sealed record Standing(Prompt Prompt, CancellationToken Cancel)
    {
        public TaskCompletionSource<Answer> Answer { get; } = new(TaskCreationOptions.RunContinuationsAsynchronously);
    }

    private sealed class Nothing : IDisposable
    {
        public void Dispose() { }
    }

    private void Print(Prompt prompt)
    {
        if (prompt.Refused is { } refused) console.MarkupLineInterpolated($"[yellow]not taken[/]: {refused}");
        var place = plant.Places.FirstOrDefault(one => one.Id == prompt.OperatorPlace) is { } where ? $"{where.Text.For(language)}: " : "";
        console.MarkupLineInterpolated($"[bold][[{prompt.Number}]] {place}{prompt.TextFor(language)}[/]");
        if (prompt.Picture is { } picture) console.MarkupLineInterpolated($"     [grey]picture: {picture}[/]");
        var limit = prompt.Within is { } within ? $" within {within.TotalSeconds:0.#} s" : "";
        console.MarkupLineInterpolated($"     [grey]{Help(prompt)}{limit}[/]");
    }

    private string Help(Prompt prompt)
    {
        var kind = prompt.Kind switch
        {
            PromptKind.Act => "the vehicle confirms it",
            PromptKind.Confirm or PromptKind.Caution => "Enter when done or understood",
            PromptKind.Judge => $"y in order, n not in order{(prompt.Nonconformity is { Where.IsEmpty: false } hint ? $" (n and one of {string.Join(", ", hint.Where)})" : "")}",
            PromptKind.Enter => prompt.Shape?.Unit is { } unit ? $"type the value in {unit}" : "type the value",
            PromptKind.Scan => "scan or type the code",
            PromptKind.Choose => $"type one of {string.Join(", ", prompt.Choices)}",
            _ => "a again, g go on, stop REASON",
        };
        return kind + (hands is null ? "" : "; . lets the simulated person do it") + "; pass REASON passes it over; stop REASON ends the run;";
    }

    private void Handle(string line)
    {
        var (standing, text) = Addressed(line.Trim());
        if (standing is null)
        {
            console.MarkupLine("[grey]no prompt waits for an answer[/]");
            return;
        }

        if (text == "." && hands is not null)
        {
            _ = LetHandsAnswer(standing, hands);
            return;
        }

        if (AnswerOf(standing.Prompt, text) is { } answer) standing.Answer.TrySetResult(answer);
        else console.MarkupLineInterpolated($"[yellow]'{text}' is no answer here[/]: {Help(standing.Prompt)}");
    }

    private (Standing? Standing, string Text) Addressed(string line)
    {
        var colon = line.IndexOf(':', StringComparison.Ordinal);
        if (colon > 0 && int.TryParse(line[..colon], out var number) && _standing.Find(one => one.Prompt.Number == number) is { } named)
        {
            return (named, line[(colon + 1)..].Trim());
        }

        return (_standing.FirstOrDefault(), line);
    }

    private static Answer? AnswerOf(Prompt prompt, string text)
    {
        var (word, rest) = text.Split(' ', 2) is [var first, var second] ? (first, second.Trim()) : (text, "");
        switch (word)
        {
            case "stop": return new Answer.Stop(rest.Length > 0 ? rest : "stopped by the operator");
            case "pass" when rest.Length > 0: return new Answer.PassedOver(rest);
        }

        return prompt.Kind switch
        {
            PromptKind.Confirm or PromptKind.Caution when text.Length == 0 => new Answer.Confirmed(),
            PromptKind.Judge when word == "y" => new Answer.Ok(),
            PromptKind.Judge when word == "n" => new Answer.NotOk(rest.Length > 0 ? rest : null),
            PromptKind.Enter or PromptKind.Scan or PromptKind.Choose when text.Length > 0 => new Answer.Text(text),
            PromptKind.Decide when word == "a" => new Answer.Again(),
            PromptKind.Decide when word == "g" => new Answer.GoOn(),
            _ => null,
        };
    }

    private static async Task LetHandsAnswer(Standing standing, IOperator hands)
    {
        try
        {
            standing.Answer.TrySetResult(await hands.AskAsync(standing.Prompt, standing.Cancel));
        }
        catch (OperationCanceledException)
        {
            // The prompt was withdrawn: the vehicle has confirmed it, or its time is over.
        }
    }

    /// <summary>Lines are read on a thread of their own and handled on the run's; at the end of the input nobody answers any more.</summary>
    private void ReadLines()
    {
        if (_reads) return;
        _reads = true;
        var thread = new Thread(() =>
        {
            while (input.ReadLine() is { } line) loop.Post(() => Handle(line));
        })
        { IsBackground = true, Name = "operator input" };
        thread.Start();
    }
}
