using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;
using Microsoft.CodeAnalysis.CSharp.Scripting;
using Microsoft.CodeAnalysis.Scripting;

namespace EolSequencer.Language.Scratch;

/// <summary>
/// Lines of C# over the channels of a station, one after the other: what one declares, the next ones see. For engineers at a
/// prompt; nothing here is guarded as the expressions of sequences are, and nothing of it can get into a sequence.
/// </summary>
/// <remarks>One line at a time, on whatever thread; a line that is given up leaves the pad as it was before it.</remarks>
public sealed class ScratchPad(IReadOnlyList<DeviceRole> roles, IScratchReader reader)
{
    private readonly Lock _turn = new();
    private ScriptState<object>? _state;
    private int _abandoned;

    /// <summary>Compiles a line and runs it on this thread to its end. Every trouble is in the result.</summary>
    /// <param name="begins">Called when the line is compiled and begins to run.</param>
    public ScratchResult Evaluate(string line, Action begins)
    {
        int turn;
        ScriptState<object>? before;
        lock (_turn) (turn, before) = (_abandoned, _state);
        try
        {
            before ??= Begin();
            var (code, edits) = ScratchLine.Of(LineEnd.Closed(line), before.Script);
            var script = before.Script.ContinueWith<object>(code);
            var faults = script.Compile().Where(fault => fault.Severity == Microsoft.CodeAnalysis.DiagnosticSeverity.Error).ToList();
            if (faults.Count > 0) return new ScratchResult("", string.Join('\n', faults.Select(fault => ScratchWords.Of(fault, script.GetCompilation(), edits))));

            begins();
            var after = script.RunFromAsync(before, catchException: null, CancellationToken.None).GetAwaiter().GetResult();
            var text = ScratchText.Of(after.ReturnValue);
            lock (_turn)
            {
                if (turn == _abandoned) _state = after;
            }

            return new ScratchResult(text, null);
        }
        catch (Exception fault)
        {
            // A line is anybody's code and may throw anything; here is the edge at which it becomes words.
            return new ScratchResult("", Describe(fault));
        }
    }

    /// <summary>The line that is running has been given up: what it comes to does not count any more.</summary>
    public void Abandon()
    {
        lock (_turn) _abandoned++;
    }

    private ScriptState<object> Begin()
    {
        var options = ScriptOptions.Default.WithReferences(ScratchReferences.All).WithEmitDebugInformation(false);
        var prelude = CSharpScript.Create<object>(ScratchPrelude.Of(roles), options, typeof(ScratchGlobals));
        return prelude.RunAsync(new ScratchGlobals(reader)).GetAwaiter().GetResult();
    }

    private static string Describe(Exception fault) => fault switch
    {
        ScratchTrouble or ExpressionFault => fault.Message,
        InsufficientExecutionStackException => "a function of the line calls itself without an end",
        AggregateException { InnerException: { } inner } => Describe(inner),
        _ => $"{fault.GetType().Name}: {fault.Message}",
    };
}
