using EolSequencer.Language.Scratch;
using EolSequencer.Model.Values;
using EolSequencer.Station.Time;

namespace EolSequencer.Cli.Probing.Scratch;

/// <summary>One line of C# that runs on a thread of its own and asks the session for readings.</summary>
internal sealed class Evaluation(StationLoop? loop) : IDisposable
{
    private readonly CancellationTokenSource _givenUp = new();

    /// <summary>What the line's thread has to say.</summary>
    public Mailbox<Message> Messages { get; } = new(loop);

    /// <summary>The line's thread asks and waits for the answer.</summary>
    /// <exception cref="ScratchTrouble">There is none.</exception>
    public Value Ask(string role, string channel, string? index)
    {
        var answer = new TaskCompletionSource<Value>(TaskCreationOptions.RunContinuationsAsynchronously);
        Messages.Post(new Message.Wants(role, channel, index, answer));
        try
        {
            answer.Task.Wait(_givenUp.Token);
            return answer.Task.Result;
        }
        catch (OperationCanceledException)
        {
            throw new ScratchTrouble("the line was given up");
        }
        catch (AggregateException fault)
        {
            throw fault.InnerException!;
        }
    }

    /// <summary>Nobody answers any more; what is asked from now on ends the line.</summary>
    public void Dispose() => _givenUp.Cancel();

    internal abstract record Message
    {
        /// <summary>It is compiled and runs.</summary>
        public sealed record Begins : Message;

        /// <summary>It needs a reading.</summary>
        public sealed record Wants(string Role, string Channel, string? Index, TaskCompletionSource<Value> Answer) : Message;

        /// <summary>It has ended.</summary>
        public sealed record Ends(ScratchResult Result) : Message;
    }
}
