using EolSequencer.Records.Writing;

namespace EolSequencer.Records.Tests.Writing;

/// <summary>Runs that go on at once end in any order; the ledger has them in the order of their numbers, and nobody waits for ever.</summary>
public sealed class HandOverTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    [Fact]
    public void Items_come_in_the_order_of_their_numbers_whatever_order_they_are_put_in()
    {
        var handOver = new HandOver<string>(mostReady: 8, mostAhead: 8);
        for (var n = 1; n <= 4; n++) Assert.Equal(n, handOver.Announce());

        handOver.Put(3, "three");
        handOver.Put(1, "one");
        handOver.Put(4, "four");
        handOver.Put(2, "two");

        Assert.Equal(["one", "two", "three", "four"], Enumerable.Range(0, 4).Select(_ => handOver.Take()));
    }

    [Fact]
    public void A_number_that_was_given_up_holds_nobody_up()
    {
        var handOver = new HandOver<string>(mostReady: 8, mostAhead: 8);
        handOver.Announce();
        handOver.Announce();

        handOver.Put(2, "two");
        handOver.Put(1, null);

        Assert.Equal("two", handOver.Take());
    }

    [Fact]
    public void When_it_closes_numbers_that_never_came_are_passed_over()
    {
        var handOver = new HandOver<string>(mostReady: 8, mostAhead: 8);
        handOver.Put(2, "two");
        handOver.Put(4, "four");

        handOver.Close();

        Assert.Equal(["two", "four", null], Enumerable.Range(0, 3).Select(_ => handOver.Take()));
    }

    [Fact]
    public void A_giver_waits_while_the_taker_has_enough()
    {
        var handOver = new HandOver<string>(mostReady: 2, mostAhead: 8);
        handOver.Put(1, "one");
        handOver.Put(2, "two");
        var third = Started(() => handOver.Put(3, "three"));

        Assert.False(third.Join(50));
        Assert.Equal("one", handOver.Take());
        Assert.True(third.Join(Patience));
    }

    [Fact]
    public void What_waits_for_an_older_number_makes_nobody_wait()
    {
        var handOver = new HandOver<string>(mostReady: 2, mostAhead: 8);

        for (var n = 2; n <= 6; n++) handOver.Put(n, "later");
        handOver.Put(1, "first");

        Assert.Equal("first", handOver.Take());
    }

    [Fact]
    public void No_number_is_given_out_while_the_oldest_is_too_far_behind()
    {
        var handOver = new HandOver<string>(mostReady: 8, mostAhead: 3);
        for (var n = 1; n <= 3; n++) handOver.Announce();
        var fourth = Started(() => handOver.Announce());

        Assert.False(fourth.Join(50));
        handOver.Put(1, "one");
        handOver.Take();
        Assert.True(fourth.Join(Patience));
    }

    private static Thread Started(Action work)
    {
        var thread = new Thread(() => work()) { IsBackground = true };
        thread.Start();
        return thread;
    }
}
