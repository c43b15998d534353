using EolSequencer.Model.Ports;

namespace EolSequencer.Rehearsal.Tests.Operators;

/// <summary>Takes note of what it is asked and confirms it at once.</summary>
internal sealed class RecordingOperator : IOperator
{
    public List<string> Asked { get; } = [];

    public List<string> Shown { get; } = [];

    public Task<Answer> AskAsync(Prompt prompt, CancellationToken cancel)
    {
        Asked.Add(OperatorScript.AddressOf(prompt.Step, prompt.Kind));
        return Task.FromResult<Answer>(new Answer.Confirmed());
    }

    public IDisposable Show(Notice notice)
    {
        Shown.Add(notice.Step);
        return new Handle(() => Shown.Remove(notice.Step));
    }

    private sealed class Handle(Action end) : IDisposable
    {
        public void Dispose() => end();
    }
}
