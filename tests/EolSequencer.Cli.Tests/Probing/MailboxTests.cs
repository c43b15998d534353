using EolSequencer.Cli.Probing;
using EolSequencer.Station.Time;

namespace EolSequencer.Cli.Tests.Probing;

/// <summary>Threads hand things to the session through a mailbox: nothing is lost, and nothing is announced twice.</summary>
public sealed class MailboxTests
{
    [Fact]
    public void What_was_taken_already_is_not_announced_any_more()
    {
        var loop = new StationLoop(TimeProvider.System);
        var announced = loop.Run(async () =>
        {
            var (mailbox, times) = (new Mailbox<int>(loop), 0);
            mailbox.Post(1); // Its announcement waits in the loop …
            Assert.Equal(1, await mailbox.TakeAsync(CancellationToken.None)); // … and it is taken before.
            mailbox.Arrived = () => times++;
            await Task.Yield();
            return times;
        });

        Assert.Equal(0, announced);
    }

    [Fact]
    public void Things_from_other_threads_come_in_their_order()
    {
        var loop = new StationLoop(TimeProvider.System);
        var mailbox = new Mailbox<int>(loop);
        var thread = new Thread(() =>
        {
            for (var number = 0; number < 1000; number++) mailbox.Post(number);
        });
        var taken = loop.Run(async () =>
        {
            thread.Start();
            var numbers = new List<int>();
            while (numbers.Count < 1000) numbers.Add(await mailbox.TakeAsync(CancellationToken.None));
            return numbers;
        });

        Assert.Equal(Enumerable.Range(0, 1000), taken);
    }

    [Fact]
    public void Nobody_waits_longer_than_the_limit()
    {
        var loop = new StationLoop(TimeProvider.System);
        using var limit = new CancellationTokenSource(TimeSpan.FromMilliseconds(20));

        Assert.True(loop.Run(async () => await Assert.ThrowsAnyAsync<OperationCanceledException>(async () => await new Mailbox<int>(loop).TakeAsync(limit.Token)) is not null));
        Assert.ThrowsAny<OperationCanceledException>(() => new Mailbox<int>(null).TakeAsync(limit.Token).AsTask().GetAwaiter().GetResult());
    }
}
