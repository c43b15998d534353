using CsCheck;
using EolSequencer.Simulators.Time;

namespace EolSequencer.Simulators.Tests.Time;

/// <summary>Everything in rehearsal rests on this clock: same work, same order, no waiting, and a clear word when it stands still.</summary>
public sealed class VirtualTimeTests
{
    private static readonly DateTimeOffset Start = new(2026, 3, 2, 6, 0, 0, TimeSpan.Zero);

    [Fact]
    public void An_hour_passes_without_waiting()
    {
        var time = new VirtualTime(Start);
        time.Run(() => Task.Delay(TimeSpan.FromHours(1), time));
        Assert.Equal(TimeSpan.FromHours(1), time.Now);
        Assert.Equal(TimeSpan.FromHours(1), time.GetElapsedTime(0));
        Assert.Equal(Start.AddHours(1), time.GetUtcNow());
    }

    [Fact]
    public void Waits_of_equal_length_end_in_the_order_in_which_they_began()
    {
        var time = new VirtualTime(Start);
        var order = new List<int>();
        time.Run(() => Task.WhenAll(Enumerable.Range(0, 20).Select(Wait)));
        Assert.Equal(Enumerable.Range(0, 20), order);

        async Task Wait(int number)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(5), time);
            order.Add(number);
        }
    }

    [Fact]
    public void Any_set_of_waits_ends_in_the_order_of_due_moment_then_of_beginning() =>
        Gen.Int[0, 8].Array[0, 60].Sample(waits =>
        {
            var time = new VirtualTime(Start);
            var ended = new List<(long Due, int Number)>();
            for (var i = 0; i < waits.Length; i++)
            {
                var number = i;
                time.At(TimeSpan.FromTicks(waits[i]), () => ended.Add((time.GetTimestamp(), number)));
            }

            time.Advance(TimeSpan.FromTicks(8));
            return ended.SequenceEqual(waits.Select((due, number) => ((long)due, number)).Order());
        });

    [Fact]
    public void Continuations_of_one_moment_come_before_the_next_happening_of_that_moment()
    {
        var time = new VirtualTime(Start);
        var order = new List<string>();
        time.Run(async () =>
        {
            var posted = SynchronizationContext.Current!;
            time.At(TimeSpan.FromSeconds(1), () => { order.Add("first"); posted.Post(_ => order.Add("what it released"), null); });
            time.At(TimeSpan.FromSeconds(1), () => order.Add("second"));
            await Task.Delay(TimeSpan.FromSeconds(2), time);
        });
        Assert.Equal(["first", "what it released", "second"], order);
    }

    [Fact]
    public void Completions_that_ask_to_run_later_stay_on_the_thread()
    {
        var time = new VirtualTime(Start);
        var source = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        var thread = Environment.CurrentManagedThreadId;
        time.At(TimeSpan.FromSeconds(3), source.SetResult);
        time.Run(async () =>
        {
            await source.Task;
            Assert.Equal(thread, Environment.CurrentManagedThreadId);
            Assert.Equal(TimeSpan.FromSeconds(3), time.Now);
        });
    }

    [Fact]
    public void Work_that_waits_for_nothing_that_will_come_is_named_and_does_not_hang()
    {
        var time = new VirtualTime(Start);
        var never = new TaskCompletionSource();
        var deadlock = Assert.Throws<VirtualDeadlock>(() => time.Run(async () =>
        {
            await Task.Delay(TimeSpan.FromMilliseconds(1500), time);
            await never.Task;
        }));
        Assert.Equal(TimeSpan.FromMilliseconds(1500), deadlock.At);
        Assert.Contains("00:00:01.5", deadlock.Message);
        Assert.Contains("nothing is due", deadlock.Message);
    }

    [Fact]
    public void A_time_limit_that_was_cancelled_neither_moves_the_clock_nor_hides_a_deadlock()
    {
        var time = new VirtualTime(Start);
        var deadlock = Assert.Throws<VirtualDeadlock>(() => time.Run(async () =>
        {
            using (new CancellationTokenSource(TimeSpan.FromSeconds(30), time)) await Task.Delay(TimeSpan.FromSeconds(1), time);
            await new TaskCompletionSource().Task;
        }));
        Assert.Equal(TimeSpan.FromSeconds(1), deadlock.At);
    }

    [Fact]
    public void Work_beyond_its_horizon_is_ended()
    {
        var time = new VirtualTime(Start);
        async Task ForEver()
        {
            while (true) await Task.Delay(TimeSpan.FromSeconds(1), time);
        }

        var deadlock = Assert.Throws<VirtualDeadlock>(() => time.Run(ForEver, horizon: TimeSpan.FromSeconds(10)));
        Assert.Equal(TimeSpan.FromSeconds(10), deadlock.At);
        Assert.Contains("horizon", deadlock.Message);
    }

    [Fact]
    public void Work_that_never_lets_the_clock_go_on_is_ended()
    {
        var time = new VirtualTime(Start);
        var deadlock = Assert.Throws<VirtualDeadlock>(() => time.Run(async () =>
        {
            while (true) await Task.Yield();
        }));
        Assert.Contains("one moment", deadlock.Message);
    }

    [Fact]
    public void A_continuation_from_another_thread_is_named()
    {
        var time = new VirtualTime(Start);
        var deadlock = Assert.Throws<VirtualDeadlock>(() => time.Run(async () =>
        {
            var elsewhere = new TaskCompletionSource();
            var waiting = Wait(elsewhere.Task);
            var thread = new Thread(elsewhere.SetResult);
            thread.Start();
            thread.Join();
            await waiting;
        }));
        Assert.Contains("another thread", deadlock.Message);

        static async Task Wait(Task task) => await task;
    }

    [Fact]
    public void A_time_limit_cancels_at_its_moment()
    {
        var time = new VirtualTime(Start);
        time.Run(async () =>
        {
            using var limit = new CancellationTokenSource(TimeSpan.FromSeconds(5), time);
            await Assert.ThrowsAnyAsync<OperationCanceledException>(() => Task.Delay(TimeSpan.FromSeconds(9), time, limit.Token));
            Assert.Equal(TimeSpan.FromSeconds(5), time.Now);
        });
    }

    [Fact]
    public void A_periodic_timer_does_not_drift()
    {
        var time = new VirtualTime(Start);
        var stamps = new List<long>();
        using (time.CreateTimer(_ => stamps.Add(time.GetTimestamp()), null, TimeSpan.FromMilliseconds(10), TimeSpan.FromMilliseconds(10)))
        {
            time.Advance(TimeSpan.FromSeconds(2));
        }

        Assert.Equal(Enumerable.Range(1, 200).Select(i => i * 10 * TimeSpan.TicksPerMillisecond), stamps);
    }

    [Fact]
    public void A_timer_can_be_put_off_stopped_and_no_longer_changed_when_disposed()
    {
        var time = new VirtualTime(Start);
        var stamps = new List<TimeSpan>();
        var timer = time.CreateTimer(_ => stamps.Add(time.Now), null, TimeSpan.FromSeconds(1), Timeout.InfiniteTimeSpan);
        timer.Change(TimeSpan.FromSeconds(2), Timeout.InfiniteTimeSpan);
        time.Advance(TimeSpan.FromSeconds(5));
        timer.Change(TimeSpan.FromSeconds(1), Timeout.InfiniteTimeSpan);
        timer.Change(Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
        time.Advance(TimeSpan.FromSeconds(5));
        timer.Dispose();
        Assert.False(timer.Change(TimeSpan.Zero, TimeSpan.Zero));
        Assert.Equal([TimeSpan.FromSeconds(2)], stamps);
    }

    [Fact]
    public void A_fault_in_the_work_comes_out_of_run_and_the_clock_can_be_used_again()
    {
        var time = new VirtualTime(Start);
        Assert.Throws<FormatException>(() => time.Run(async () =>
        {
            await Task.Delay(TimeSpan.FromSeconds(1), time);
            throw new FormatException();
        }));
        Assert.Equal(7, time.Run(() => Task.FromResult(7)));
        Assert.Null(SynchronizationContext.Current);
    }
}
