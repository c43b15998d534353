using System.Collections.Concurrent;

namespace EolSequencer.Station.Time;

/// <summary>
/// Real time on one thread: everything a run does, its timers and what reaches it from outside included, happens one
/// after the other on the thread that calls <see cref="Run{T}"/>.
/// </summary>
public sealed class StationLoop
{
    private readonly BlockingCollection<(SendOrPostCallback Callback, object? State)> _work = [];
    private readonly Context _context;

    public StationLoop(TimeProvider clock)
    {
        _context = new Context(this);
        Time = new PostingTimeProvider(clock, Post);
    }

    /// <summary>The clock of the run: that of the outside, its timers call back on the loop's thread.</summary>
    public TimeProvider Time { get; }

    /// <summary>Lets something happen on the loop's thread; may be called from any thread.</summary>
    public void Post(Action action) => _work.Add((_ => action(), null));

    /// <summary>Runs work to its end.</summary>
    public T Run<T>(Func<Task<T>> work)
    {
        var outside = SynchronizationContext.Current;
        SynchronizationContext.SetSynchronizationContext(_context);
        try
        {
            var task = work();
            task.ContinueWith(_ => Post(() => { }), CancellationToken.None, TaskContinuationOptions.ExecuteSynchronously, TaskScheduler.Default);
            while (!task.IsCompleted)
            {
                var (callback, state) = _work.Take();
                callback(state);
            }

            return task.GetAwaiter().GetResult();
        }
        finally
        {
            SynchronizationContext.SetSynchronizationContext(outside);
        }
    }

    private sealed class Context(StationLoop loop) : SynchronizationContext
    {
        public override void Post(SendOrPostCallback callback, object? state) => loop._work.Add((callback, state));

        public override void Send(SendOrPostCallback callback, object? state) =>
            throw new NotSupportedException("nothing waits for the loop's thread");

        public override SynchronizationContext CreateCopy() => this;
    }
}
