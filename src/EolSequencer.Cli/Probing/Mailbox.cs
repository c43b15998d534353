using System.Collections.Concurrent;
using EolSequencer.Station.Time;

namespace EolSequencer.Cli.Probing;

/// <summary>What other threads hand to the session's thread, one thing after the other.</summary>
/// <param name="loop">
/// The loop of a session in real time, which goes on while the session waits; null in virtual time, which stands still then.
/// </param>
internal sealed class Mailbox<T>(StationLoop? loop)
{
    private readonly BlockingCollection<T> _items = [];
    private TaskCompletionSource? _waiting;

    /// <summary>Called on the session's thread when something has come; real time only.</summary>
    public Action? Arrived { get; set; }

    /// <summary>From any thread.</summary>
    public void Post(T item)
    {
        _items.Add(item);
        loop?.Post(() =>
        {
            // The session may have taken it before the loop came to this.
            if (_items.Count == 0) return;
            Arrived?.Invoke();
            _waiting?.TrySetResult();
        });
    }

    /// <summary>The next item, on the session's thread.</summary>
    /// <exception cref="OperationCanceledException">Nothing came before the cancellation, which may come from any thread.</exception>
    public async ValueTask<T> TakeAsync(CancellationToken cancel)
    {
        if (loop is null) return _items.Take(cancel);
        while (true)
        {
            if (_items.TryTake(out var item)) return item;
            var waiting = _waiting = new TaskCompletionSource();
            using var given = cancel.Register(() => loop.Post(() => waiting.TrySetCanceled(cancel)));
            await waiting.Task;
        }
    }
}
