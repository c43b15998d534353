using EolSequencer.Model.Ports;

namespace EolSequencer.Engine.Tests.Kit;

/// <summary>A person who answers each prompt as told, after a time; who is told nothing never answers.</summary>
internal sealed class FakeOperator(TimeProvider time) : IOperator
{
    private readonly Dictionary<string, Queue<(TimeSpan After, Answer Answer)>> _answers = [];

    /// <summary>The prompts that went up, in order.</summary>
    public List<Prompt> Prompts { get; } = [];

    /// <summary>The most prompts that stood at once.</summary>
    public int MostAtOnce { get; private set; }

    private int _standing;

    /// <summary>One answer to the next prompt of a step; a caution is answered by <c>STEP!</c>, a decision by <c>STEP?</c>.</summary>
    public FakeOperator Answers(string step, Answer answer, double afterSeconds = 1)
    {
        if (!_answers.TryGetValue(step, out var queue)) _answers[step] = queue = new Queue<(TimeSpan, Answer)>();
        queue.Enqueue((TimeSpan.FromSeconds(afterSeconds), answer));
        return this;
    }

    public async Task<Answer> AskAsync(Prompt prompt, CancellationToken cancel)
    {
        Prompts.Add(prompt);
        MostAtOnce = Math.Max(MostAtOnce, ++_standing);
        try
        {
            var key = prompt.Kind switch { PromptKind.Caution => prompt.Step + "!", PromptKind.Decide => prompt.Step + "?", _ => prompt.Step };
            if (!_answers.TryGetValue(key, out var queue) || queue.Count == 0)
            {
                await Task.Delay(Timeout.InfiniteTimeSpan, time, cancel);
                throw new InvalidOperationException("an endless wait ended");
            }

            var (after, answer) = queue.Dequeue();
            await Task.Delay(after, time, cancel);
            return answer;
        }
        finally
        {
            _standing--;
        }
    }

    public IDisposable Show(Notice notice) => new Nothing();

    private sealed class Nothing : IDisposable
    {
        public void Dispose() { }
    }
}
