using EolSequencer.Statistics.Conformity;

namespace EolSequencer.Statistics.Tests.Conformity;

/// <summary>Risks over a process, against the worked examples of JCGM 106 and the published tests of an uncertainty library.</summary>
public class GlobalRiskTests
{
    /// <summary>
    /// JCGM 106:2012 resistors: process N(1500, 0.12), tolerance 1499.8 to 1500.2, u 0.04. Digits by numerical integration
    /// with scipy 1.10.1.
    /// </summary>
    [Theory]
    [InlineData(0, 0.018942, 0.037208)]
    [InlineData(0.02, 0.009878, 0.069027)]
    [InlineData(-0.02, 0.031145, 0.017554)]
    public void The_resistors_of_the_guide(double band, double falseAcceptance, double falseRejection)
    {
        var tolerance = new Interval(1499.8, 1500.2);
        var risk = GlobalRisk.Of(1500, 0.12, tolerance, tolerance.Guarded(band), 0.04);
        Assert.Equal(0.904419, risk.Conforming, 6);
        Assert.Equal(falseAcceptance, risk.FalseAcceptance, 6);
        Assert.Equal(falseRejection, risk.FalseRejection, 6);
    }

    /// <summary>JCGM 106:2012, 9.5.4: run-out below 2 with a gamma prior of shape 4 and scale 0.25, u 0.25; printed 0.8 % and 1.7 %.</summary>
    [Theory]
    [InlineData(2, 0.008019, 0.017445)]
    [InlineData(1.671829, 0.001, 0.075494)]
    [InlineData(1.67, 0.000985, 0.075983)]
    public void The_ball_bearings_of_the_guide(double limit, double falseAcceptance, double falseRejection)
    {
        static double Gamma(double x) => x <= 0 ? 0 : x * x * x * Math.Exp(-x / 0.25) / (6 * Math.Pow(0.25, 4));
        var risk = GlobalRisk.Of(Gamma, new Interval(0, 15), Interval.UpTo(2), Interval.UpTo(limit), 0.25);
        Assert.Equal(0.042380, 1 - risk.Conforming, 6);
        Assert.Equal(falseAcceptance, risk.FalseAcceptance, 6);
        Assert.Equal(falseRejection, risk.FalseRejection, 6);
    }

    /// <summary>Sandia suncal (repository sandialabs/suncal, d44c2cc), tests of risk: PFA .0080, PFR .015; .0025; .008, .066.</summary>
    [Theory]
    [InlineData(2, 4, 1, 0.008006, 0.014851)]
    [InlineData(2, 2, 0.91, 0.008052, 0.066106)]
    public void The_published_tests_of_a_library(double limit, double ratio, double acceptance, double falseAcceptance, double falseRejection)
    {
        var tolerance = new Interval(-limit, limit);
        var risk = GlobalRisk.Of(0, 1, tolerance, new Interval(-limit * acceptance, limit * acceptance), 1 / ratio);
        Assert.Equal(falseAcceptance, risk.FalseAcceptance, 6);
        Assert.Equal(falseRejection, risk.FalseRejection, 6);
    }

    [Fact]
    public void A_wider_tolerance_of_the_same_library() =>
        Assert.Equal(0.002445, GlobalRisk.Of(0, 1, new Interval(-2.5, 2.5), new Interval(-2.5, 2.5), 0.25).FalseAcceptance, 6);

    /// <summary>
    /// Test uncertainty ratio (tolerance half-width over U) at 95 % in tolerance, where a standard deviation is 1 / 1.959964 of
    /// the half-width. Risks in percent, by numerical integration with scipy 1.10.1.
    /// </summary>
    [Theory]
    [InlineData(1, 1.8012, 12.957)]
    [InlineData(1.5, 1.5412, 6.6245)]
    [InlineData(2, 1.3373, 4.1775)]
    [InlineData(3, 1.0485, 2.2936)]
    [InlineData(4, 0.8583, 1.5537)]
    [InlineData(10, 0.4060, 0.5162)]
    public void Simple_acceptance_by_test_uncertainty_ratio(double ratio, double falseAcceptance, double falseRejection)
    {
        var tolerance = new Interval(-1, 1);
        var risk = GlobalRisk.Of(0, 1 / 1.959963984540054, tolerance, tolerance, 1 / ratio / 2);
        Assert.Equal(falseAcceptance, 100 * risk.FalseAcceptance, 6e-5);
        Assert.Equal(falseRejection, 100 * risk.FalseRejection, 6e-4);
    }

    /// <summary>The same with a guard band of U on both sides.</summary>
    [Theory]
    [InlineData(4, 0.02077, 10.357)]
    [InlineData(2, 0.03593, 32.92)]
    public void Guarded_acceptance_by_test_uncertainty_ratio(double ratio, double falseAcceptance, double falseRejection)
    {
        var tolerance = new Interval(-1, 1);
        var risk = GlobalRisk.Of(0, 1 / 1.959963984540054, tolerance, tolerance.Guarded(1 / ratio), 1 / ratio / 2);
        Assert.Equal(falseAcceptance, 100 * risk.FalseAcceptance, 5);
        Assert.Equal(falseRejection, 100 * risk.FalseRejection, 2);
    }

    /// <summary>Ratio of process to measurement 4, by share in tolerance: draft RP-19 table, recomputed with scipy 1.10.1; joint and among the accepted, in percent.</summary>
    [Theory]
    [InlineData(0.8416212335729143, 4.838603, 8.260082)]
    [InlineData(1.0364333894937898, 3.922341, 5.723220)]
    [InlineData(1.2815515655446004, 2.855831, 3.632272)]
    [InlineData(1.6448536269514722, 1.599954, 1.798805)]
    [InlineData(1.959963984540054, 0.871010, 0.923898)]
    [InlineData(2.5758293035489004, 0.199917, 0.202439)]
    public void The_share_of_bad_items_among_those_accepted(double halfWidth, double falseAcceptance, double amongAccepted)
    {
        var tolerance = new Interval(-halfWidth, halfWidth);
        var risk = GlobalRisk.Of(0, 1, tolerance, tolerance, 0.25);
        Assert.Equal(falseAcceptance, 100 * risk.FalseAcceptance, 5);
        Assert.Equal(amongAccepted, 100 * risk.FalseAcceptance / risk.Accepted, 5);
    }
}
