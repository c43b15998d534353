namespace EolSequencer.Rehearsal.Operators;
using EolSequencer.Model.Ports;
public sealed class ScriptedOperator(OperatorScript script, IOperator inner, TimeProvider time) : IOperator
{
    public Task<Answer> AskAsync(Prompt prompt, CancellationToken cancel) { _ = script; _ = time; return inner.AskAsync(prompt, cancel); }
    public IDisposable Show(Notice notice) => inner.Show(notice);
}
