using EolSequencer.Model.Waiting;
using EolSequencer.Station.Time;

namespace EolSequencer.Station.Tests.Time;

/// <summary>A run has no locks because everything of it happens on one thread; real timers must come to that thread.</summary>
public class StationLoopTests
{
    [Fact]
    public void Timers_continuations_and_calls_from_outside_come_to_the_loops_thread()
    {
        var loop = new StationLoop(TimeProvider.System);
        var threads = new HashSet<int>();
        loop.Run(async () =>
        {
            threads.Add(Environment.CurrentManagedThreadId);
            await Pause.ForAsync(TimeSpan.FromMilliseconds(20), loop.Time, CancellationToken.None);
            threads.Add(Environment.CurrentManagedThreadId);
            var called = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
            new Thread(() => loop.Post(() =>
            {
                threads.Add(Environment.CurrentManagedThreadId);
                called.SetResult();
            })).Start();
            await called.Task;
            threads.Add(Environment.CurrentManagedThreadId);
            return 0;
        });
        Assert.Equal([Environment.CurrentManagedThreadId], threads);
    }

    [Fact]
    public void A_timer_that_was_ended_does_not_call_any_more()
    {
        var loop = new StationLoop(TimeProvider.System);
        var calls = 0;
        loop.Run(async () =>
        {
            var timer = loop.Time.CreateTimer(_ => calls++, null, TimeSpan.FromMilliseconds(1), Timeout.InfiniteTimeSpan);
            Thread.Sleep(30); // It has fired and waits for the loop.
            timer.Dispose();
            await Pause.ForAsync(TimeSpan.FromMilliseconds(20), loop.Time, CancellationToken.None);
            return 0;
        });
        Assert.Equal(0, calls);
    }

    [Fact]
    public void Trouble_of_the_work_reaches_the_caller() =>
        Assert.Throws<InvalidOperationException>(() => new StationLoop(TimeProvider.System).Run<int>(() => throw new InvalidOperationException()));
}
