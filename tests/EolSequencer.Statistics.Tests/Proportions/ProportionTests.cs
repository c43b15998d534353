using EolSequencer.Statistics.Proportions;

namespace EolSequencer.Statistics.Tests.Proportions;

/// <summary>Intervals of proportions against published tables; a limit is moved by what they say.</summary>
public class ProportionTests
{
    /// <summary>Printed values: Statistics in Medicine 17 (1998), 857, table I, method 3. 45/50 and 7/50: by the formula with R 4.2.2.</summary>
    [Theory]
    [InlineData(81, 263, 0.2553, 0.3662, 4)]
    [InlineData(15, 148, 0.0624, 0.1605, 4)]
    [InlineData(0, 20, 0, 0.1611, 4)]
    [InlineData(1, 29, 0.0061, 0.1718, 4)]
    [InlineData(29, 29, 0.8830, 1, 4)]
    [InlineData(45, 50, 0.786398, 0.956524, 6)]
    [InlineData(7, 50, 0.069508, 0.261862, 6)]
    public void The_score_interval_is_the_published_one(long hits, long of, double low, double high, int digits)
    {
        var interval = WilsonInterval.Of(hits, of)!;
        Assert.Equal((low, high), (Math.Round(interval.Low, digits), Math.Round(interval.High, digits)));
        Assert.Equal((double)hits / of, interval.Estimate);
    }

    /// <summary>The example of the function for it in the R package statpsych 1.7.0, by D. G. Bonett: 26 against 4 of 48.</summary>
    [Fact]
    public void The_interval_of_a_paired_difference_is_the_published_one()
    {
        var interval = PairedDifference.Of(26, 4, 48)!;
        Assert.Equal((0.2548067, 0.6251933), (Math.Round(interval.Low, 7), Math.Round(interval.High, 7)));
    }

    /// <summary>
    /// A. Agresti, Categorical Data Analysis (2002), 10.1: 944 of 1,600 approve first, 880 later, 150 and 86 change their mind; the difference
    /// is -0.04 with -0.06 .. -0.02. Of as many answers the adjustment is not seen in the printed digits.
    /// </summary>
    [Fact]
    public void Many_answers_come_to_what_the_textbook_prints()
    {
        var interval = PairedDifference.Of(86, 150, 1600)!;
        Assert.Equal((-0.04, -0.06, -0.02), (interval.Estimate, Math.Round(interval.Low, 2), Math.Round(interval.High, 2)));
    }

    [Fact]
    public void Nothing_judged_has_no_interval_and_nothing_changed_has_a_narrow_one_around_nothing()
    {
        Assert.Null(WilsonInterval.Of(0, 0));
        Assert.Null(PairedDifference.Of(0, 0, 0));
        var interval = PairedDifference.Of(0, 0, 28_000)!;
        Assert.Equal(-interval.Low, interval.High, 15);
        Assert.InRange(interval.High, 0, 0.0002);
    }
}
