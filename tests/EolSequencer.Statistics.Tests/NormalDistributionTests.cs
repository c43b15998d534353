namespace EolSequencer.Statistics.Tests;

/// <summary>Every probability in a report comes through this one function.</summary>
public class NormalDistributionTests
{
    /// <summary>One-sided coverage, JCGM 106:2012 table 1; the third column computed with R 4.2.2 qnorm.</summary>
    [Theory]
    [InlineData(0.80, 0.8416)]
    [InlineData(0.90, 1.2816)]
    [InlineData(0.95, 1.6449)]
    [InlineData(0.99, 2.3263)]
    [InlineData(0.999, 3.0902)]
    public void The_published_quantiles_have_their_coverage(double coverage, double z) =>
        Assert.Equal(coverage, NormalDistribution.Cumulative(z), 4);

    /// <summary>Computed with R 4.2.2 pnorm.</summary>
    [Theory]
    [InlineData(0, 0.5)]
    [InlineData(1.4, 0.919243340766229)]
    [InlineData(1.5, 0.933192798731142)]
    [InlineData(-2, 0.0227501319481792)]
    [InlineData(1.96, 0.97500210485178)]
    public void Values_agree_with_an_independent_program(double z, double expected) =>
        Assert.Equal(expected, NormalDistribution.Cumulative(z), 13);

    [Fact]
    public void The_two_ways_to_compute_meet_where_one_takes_over()
    {
        var (below, above) = (-(3 - 1e-9) * Math.Sqrt(2), -(3 + 1e-9) * Math.Sqrt(2));
        Assert.Equal(1, NormalDistribution.Cumulative(above) / NormalDistribution.Cumulative(below), 7);
    }

    [Fact]
    public void The_far_ends_are_zero_and_one()
    {
        Assert.Equal(0, NormalDistribution.Cumulative(double.NegativeInfinity));
        Assert.Equal(1, NormalDistribution.Cumulative(double.PositiveInfinity));
    }
}
