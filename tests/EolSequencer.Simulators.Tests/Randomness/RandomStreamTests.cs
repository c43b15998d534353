using EolSequencer.Simulators.Randomness;

namespace EolSequencer.Simulators.Tests.Randomness;

/// <summary>One seed fixes everything, and a draw in one place must not shift another.</summary>
public sealed class RandomStreamTests
{
    [Fact]
    public void The_same_seed_and_name_give_the_same_numbers() =>
        Assert.Equal(First(new RandomStream(42, "lamps"), 100), First(new RandomStream(42, "lamps"), 100));

    [Theory]
    [InlineData(42, "lamp")]
    [InlineData(43, "lamps")]
    public void Another_seed_or_name_gives_others(ulong seed, string name) =>
        Assert.Empty(First(new RandomStream(42, "lamps"), 100).Intersect(First(new RandomStream(seed, name), 100)));

    [Fact]
    public void Shares_lie_between_zero_and_one_around_a_half()
    {
        var stream = new RandomStream(1, "shares");
        var shares = Enumerable.Range(0, 20_000).Select(_ => stream.Share()).ToArray();
        Assert.All(shares, share => Assert.InRange(share, 0, 0.9999999999999999));
        Assert.InRange(shares.Average(), 0.49, 0.51);
    }

    [Fact]
    public void Normal_draws_have_mean_0_and_deviation_1()
    {
        var stream = new RandomStream(1, "normal");
        var draws = Enumerable.Range(0, 20_000).Select(_ => stream.Normal()).ToArray();
        Assert.InRange(draws.Average(), -0.03, 0.03);
        Assert.InRange(draws.Average(draw => draw * draw), 0.96, 1.04);
    }

    [Fact]
    public void Durations_lie_around_their_median_and_are_longer_at_most_a_few_times()
    {
        var stream = new RandomStream(1, "hands");
        var durations = Enumerable.Range(0, 9_999).Select(_ => stream.Duration(TimeSpan.FromSeconds(2), 0.3).TotalSeconds).Order().ToArray();
        Assert.InRange(durations[5_000], 1.9, 2.1);
        Assert.InRange(durations[0], 1.0, 1.2);
        Assert.InRange(durations[^1], 3.5, 5.5);
    }

    private static ulong[] First(RandomStream stream, int count) => [.. Enumerable.Range(0, count).Select(_ => stream.Next())];
}
