namespace EolSequencer.Model.Waiting;

/// <summary>Lets one through at a time, in the order of asking. For one thread; a wait can be given up.</summary>
public sealed class Turnstile
{
    private readonly LinkedList<TaskCompletionSource> _waiting = new();
    private bool _taken;

    /// <summary>Takes the turn when nobody has it; the turn ends when it is disposed.</summary>
    public bool TryEnter(out Turn turn)
    {
        turn = default;
        if (_taken) return false;
        _taken = true;
        turn = new Turn(this);
        return true;
    }

    /// <summary>Completes when it is the caller's turn; the turn ends when the result is disposed.</summary>
    public ValueTask<Turn> EnterAsync(CancellationToken cancel) => TryEnter(out var turn) ? new(turn) : QueueAsync(cancel);

    private async ValueTask<Turn> QueueAsync(CancellationToken cancel)
    {
        var place = _waiting.AddLast(new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously));
        using var giveUp = cancel.Register(() => place.Value.TrySetCanceled(cancel));
        try
        {
            await place.Value.Task;
            return new Turn(this);
        }
        catch (OperationCanceledException)
        {
            if (place.List is not null) _waiting.Remove(place);
            throw;
        }
    }

    private void Leave()
    {
        while (_waiting.First is { } next)
        {
            _waiting.RemoveFirst();
            if (next.Value.TrySetResult()) return;
        }

        _taken = false;
    }

    /// <summary>A turn that its holder gives back.</summary>
    public readonly struct Turn(Turnstile? turnstile) : IDisposable
    {
        /// <summary>Gives the turn back.</summary>
        public void Dispose() => turnstile?.Leave();
    }
}
